package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.plugin.PluginLoader;
import tamis.api.plugin.Plugins;
import tamis.api.store.SqlStore;
import tamis.api.version.Versions;
import tamis.engine.record.Limits;

/** Prices as a spreadsheet sends them, and readings as a probe does. */
class PricesAndTrialsTest {
  private static final Plugins PLUGINS =
      PluginLoader.load(
          PricesAndTrialsTest.class.getClassLoader(),
          null,
          Versions.ofThisBuild(),
          Duration.ofSeconds(10));
  private static final String CSV = "text/csv";
  private static final String JSON = "application/json";
  private static final String HEADING = "ingredient,pack,price,yieldPercent,supplier\r\n";
  private static final String TRIAL =
      """
      {"id":"t1","formula":"cream@1","started":"2026-04-11T08:00","observations":[
        {"id":"o1","stage":"syrup","at":"2026-04-11T08:06","measure":"temperature","value":"104 °C"}]}""";
  private static final String READING =
      """
      {"id":"o2","at":"2026-04-11T08:10","measure":"temperature","value":"112 °C"}""";

  @TempDir Path directory;
  private final HttpClient http = HttpClient.newHttpClient();
  private SqlStore store;
  private Server server;

  @BeforeEach
  void open() {
    store = SqlStore.sqlite(directory.resolve("tamis.db"), Clock.systemUTC());
    var settings =
        new ServerSettings(
            "127.0.0.1",
            0,
            false,
            List.of(),
            1 << 20,
            1 << 20,
            8 << 10,
            32,
            Limits.usual(),
            Duration.ofSeconds(20),
            1 << 20);
    server = Server.start(settings, store, PLUGINS, Versions.ofThisBuild());
  }

  @AfterEach
  void close() {
    server.close();
    store.close();
  }

  @Test
  void first_prices_may_be_sent_on_the_condition_that_there_are_none() throws Exception {
    var request =
        HttpRequest.newBuilder(URI.create(server.address() + "/v1/prices"))
            .header("Content-Type", CSV)
            .header("If-None-Match", "*")
            .PUT(BodyPublishers.ofString(HEADING + "butter-unsalted,5 kg,11.95 EUR,,\r\n"))
            .build();
    var client = HttpClient.newHttpClient();
    var first = client.send(request, HttpResponse.BodyHandlers.ofString());
    assertThat(first.statusCode()).isEqualTo(200);
    assertThat(first.body()).contains("11.95 EUR");
    assertThat(client.send(request, HttpResponse.BodyHandlers.ofString()).statusCode())
        .isEqualTo(412);
  }

  @Test
  void prices_begin_empty_and_are_replaced_by_those_who_saw_them() throws Exception {
    var empty = get("/v1/prices");
    assertThat(empty.body()).isEqualTo("{}");
    assertThat(tag(empty)).isEqualTo("\"0\"");
    assertThat(put("/v1/prices", CSV, HEADING, null).statusCode()).isEqualTo(428);
    String rows = HEADING + "butter-unsalted,5 kg,11.95 EUR,88.5,\"the dairy, below\"\r\n";
    var first = put("/v1/prices?format=csv", CSV, rows, "\"0\"");
    assertThat(first.statusCode()).isEqualTo(200);
    assertThat(first.body()).isEqualTo(rows);
    assertThat(put("/v1/prices", CSV, rows, "\"0\"").statusCode()).isEqualTo(412);
    var read = get("/v1/prices.csv");
    assertThat(read.body()).isEqualTo(rows);
    assertThat(read.headers().firstValue("Content-Type")).contains("text/csv; charset=utf-8");
    assertThat(put("/v1/prices", JSON, get("/v1/prices").body(), tag(read)).statusCode())
        .isEqualTo(200);
    assertThat(get("/v1/prices.csv").body()).isEqualTo(rows);
  }

  @Test
  void prices_with_a_decimal_comma_go_there_and_back() throws Exception {
    String rows =
        "ingredient;pack;price;yieldPercent;supplier\r\nbutter-unsalted;2,5 kg;11,95 EUR;88,5;\r\n";
    assertThat(put("/v1/prices?decimal=comma", CSV, "\uFEFF" + rows, "\"0\"").statusCode())
        .isEqualTo(200);
    assertThat(get("/v1/prices?format=csv&decimal=comma").body()).isEqualTo(rows);
    assertThat(get("/v1/prices").body()).contains("\"11.95 EUR\"", "\"2.5 kg\"", "88.5");
    String grouped = rows.replace("11,95", "1.250");
    var refused = put("/v1/prices?decimal=comma", CSV, grouped, tag(get("/v1/prices")));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body()).contains("stray-point", "1.250 EUR");
  }

  @Test
  void the_demo_prices_are_taken_as_they_are() throws Exception {
    String demo = Files.readString(Path.of("../demo-data/prices.csv"));
    assertThat(put("/v1/prices", CSV, demo, "\"0\"").statusCode()).isEqualTo(200);
    assertThat(get("/v1/prices.csv").body().lines().count()).isEqualTo(demo.lines().count());
  }

  @Test
  void all_rows_are_judged_at_once_and_none_is_kept() throws Exception {
    String rows = HEADING + "butter,5 kg,cheap,,\r\nsalt,,1 EUR,,\r\nmilk,1 l,2 EUR,120,\r\n";
    var refused = put("/v1/prices", CSV, rows, "\"0\"");
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("/prices/0/price", "/prices/1/pack", "/prices/2/yieldPercent");
    assertThat(store.revision()).isZero();
  }

  @Test
  void what_is_no_csv_says_where() throws Exception {
    var open = put("/v1/prices", CSV, HEADING + "\"butter,5 kg,1 EUR,,\r\n", "\"0\"");
    assertThat(open.statusCode()).isEqualTo(400);
    assertThat(open.body()).contains("the quote that line 2 opens is not closed");
    var wide = put("/v1/prices", CSV, HEADING + "butter,5 kg\r\n", "\"0\"");
    assertThat(wide.body()).contains("line 2 has 2 cells, the heading 5");
    var other = put("/v1/prices", CSV, "ingredient,pack,cost\r\n", "\"0\"");
    assertThat(other.statusCode()).isEqualTo(422);
    assertThat(other.body()).contains("heading `cost` is not known here");
    assertThat(put("/v1/prices", CSV, "", "\"0\"").statusCode()).isEqualTo(400);
    assertThat(put("/v1/prices", "text/plain", HEADING, "\"0\"").statusCode()).isEqualTo(415);
  }

  @Test
  void readings_come_to_a_trial_once_each() throws Exception {
    makeTheCream();
    var made = post("/v1/trials", TRIAL);
    assertThat(made.statusCode()).isEqualTo(201);
    assertThat(tag(made)).isEqualTo("\"1\"");
    assertThat(post("/v1/trials", TRIAL).statusCode()).isEqualTo(409);
    String path = "/v1/trials/t1/observations";
    assertThat(post(path, READING).statusCode()).isEqualTo(201);
    assertThat(post(path, READING).statusCode()).isEqualTo(200);
    assertThat(post(path, READING.replace("112", "113")).statusCode()).isEqualTo(409);
    assertThat(post(path, READING.replace("T08:10", "T07:10").replace("o2", "o3")).statusCode())
        .isEqualTo(422);
    assertThat(post("/v1/trials/t9/observations", READING).statusCode()).isEqualTo(404);
    var read = get("/v1/trials/t1");
    assertThat(tag(read)).isEqualTo("\"1.1\"");
    assertThat(read.body()).contains("\"o1\"", "\"o2\"");
    assertThat(get(path).body()).contains("\"o1\"", "\"o2\"");
    assertThat(store.trials()).isEqualTo(2);
  }

  @Test
  void a_trial_is_not_replaced_over_a_reading_that_was_not_seen() throws Exception {
    makeTheCream();
    var made = put("/v1/trials/t1", JSON, TRIAL, "*");
    assertThat(made.statusCode()).isEqualTo(201);
    post("/v1/trials/t1/observations", READING);
    assertThat(put("/v1/trials/t1", JSON, TRIAL, tag(made)).statusCode()).isEqualTo(412);
    var read = get("/v1/trials/t1");
    var replaced = put("/v1/trials/t1", JSON, read.body(), tag(read));
    assertThat(replaced.statusCode()).isEqualTo(200);
    assertThat(tag(replaced)).isEqualTo("\"2\"");
    assertThat(replaced.body()).isEqualTo(read.body());
    assertThat(get("/v1/trials/t1/revisions/1").body()).isEqualTo(read.body());
    assertThat(get("/v1/trials/t1/revisions").body()).contains("\"revision\":2");
    assertThat(get("/v1/trials?q=cream").body()).contains("\"id\":\"t1\"");
    var gone = send("/v1/trials/t1", JSON, "\"2\"", "DELETE", "");
    assertThat(gone.statusCode()).isEqualTo(204);
    assertThat(get("/v1/trials/t1").statusCode()).isEqualTo(404);
    assertThat(get("/v1/trials/t1/revisions/2").statusCode()).isEqualTo(200);
  }

  @Test
  void a_trial_keeps_the_revisions_that_it_was_made_by() throws Exception {
    makeTheCream();
    String cake =
        "{\"id\":\"cake\",\"lines\":[{\"ingredient\":\"egg\",\"quantity\":\"1 each\"},"
            + "{\"formula\":\"cream\",\"quantity\":\"10 g\"}]}";
    post("/v1/formulas", cake);
    String trial = "{\"id\":\"t2\",\"formula\":\"cake\",\"started\":\"2026-04-11T08:00\"}";
    var made = post("/v1/trials", trial);
    assertThat(made.statusCode()).isEqualTo(201);
    assertThat(made.body()).contains("\"cake@1\"", "\"pins\":{\"cream\":1}");
    put("/v1/formulas/cake", JSON, cake.replace("10 g", "20 g"), "\"1\"");
    String kept = trial.replace("\"t2\",", "\"t2\",\"result\":\"kept\",");
    var replaced = put("/v1/trials/t2", JSON, kept, tag(made));
    assertThat(replaced.body()).as("not what is the newest now").contains("\"cake@1\"", "kept");
    var another = post("/v1/trials", trial.replace("t2", "t3"));
    assertThat(another.body()).contains("\"cake@2\"");
    var told = post("/v1/trials", trial.replace("t2", "t4").replace("cake\"", "cake@1\""));
    assertThat(told.body()).contains("\"cake@1\"");
  }

  @Test
  void an_observation_holds_all_that_is_noted_at_a_stage() throws Exception {
    makeTheCream();
    post("/v1/trials", TRIAL);
    String path = "/v1/trials/t1/observations";
    String full =
        """
        {"id":"o9","stage":"foam","at":"2026-04-11T08:20","measure":"temperature","value":"22 °C","duration":"8 min","symptom":"grainy","score":6,"photo":"shelf 3, no. 12","note":"dull"}""";
    assertThat(post(path, full).statusCode()).isEqualTo(201);
    assertThat(post(path, full).statusCode()).isEqualTo(200);
    for (String word : List.of("8 min", "grainy", "6", "shelf 3", "dull")) {
      assertThat(post(path, full.replace(word, word.equals("6") ? "7" : "9 min")).statusCode())
          .as(word)
          .isEqualTo(409);
    }
    assertThat(get("/v1/trials/t1").body())
        .contains("\"symptom\":\"grainy\"", "\"photo\":\"shelf 3, no. 12\"");
  }

  @Test
  void what_was_observed_is_not_taken_away_with_the_trial() throws Exception {
    makeTheCream();
    post("/v1/trials", TRIAL);
    post("/v1/trials/t1/observations", READING);
    var read = get("/v1/trials/t1");
    var without = put("/v1/trials/t1", JSON, TRIAL, tag(read));
    assertThat(without.statusCode()).isEqualTo(422);
    assertThat(without.body()).contains("`o2`", "\"/observations\"");
    var changed = put("/v1/trials/t1", JSON, read.body().replace("104", "105"), tag(read));
    assertThat(changed.statusCode()).isEqualTo(422);
    assertThat(changed.body()).contains("`o1`");
    String noted = read.body().replace("\"observations\"", "\"notes\":\"dull\",\"observations\"");
    assertThat(put("/v1/trials/t1", JSON, noted, tag(read)).statusCode()).isEqualTo(200);
  }

  @Test
  void a_reading_that_cannot_be_meant_is_not_kept_for_ever() throws Exception {
    String syrup =
        "{\"id\":\"syrup\",\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"60 g\",\"stage\":\"boil\"}],\"stages\":[{\"id\":\"boil\"}]}";
    String glaze =
        "{\"id\":\"glaze\",\"lines\":[{\"formula\":\"syrup\",\"quantity\":\"60 g\",\"stage\":\"stir\"}],\"stages\":[{\"id\":\"stir\"}]}";
    assertThat(post("/v1/formulas", syrup).statusCode()).isEqualTo(201);
    assertThat(post("/v1/formulas", glaze).statusCode()).isEqualTo(201);
    String wrong =
        READING.strip().replace("\"at\"", "\"stage\":\"boli\",\"at\"").replace("112 °C", "112 g");
    String trial =
        "{\"id\":\"t9\",\"formula\":\"glaze\",\"started\":\"2026-04-11T08:00\",\"observations\":[%s]}";
    var refused = post("/v1/trials", trial.formatted(wrong));
    assertThat(refused.statusCode()).isEqualTo(422);
    assertThat(refused.body())
        .contains("\"/observations/0/stage\"", "did you mean boil?", "\"/observations/0/value\"");
    assertThat(post("/v1/trials", trial.formatted("")).statusCode()).isEqualTo(201);
    var alone = post("/v1/trials/t9/observations", wrong);
    assertThat(alone.statusCode()).isEqualTo(422);
    assertThat(alone.body()).contains("\"/stage\"", "\"/value\"");
    String right = wrong.replace("boli", "boil").replace("112 g", "112 °C");
    assertThat(post("/v1/trials/t9/observations", right).statusCode()).isEqualTo(201);
  }

  private void makeTheCream() throws Exception {
    String cream =
        "{\"id\":\"cream\",\"lines\":[{\"ingredient\":\"egg\",\"quantity\":\"1 each\"}]}";
    assertThat(post("/v1/formulas", cream).statusCode()).isEqualTo(201);
  }

  private static String tag(HttpResponse<String> response) {
    return response.headers().firstValue("ETag").orElse("none");
  }

  private HttpResponse<String> get(String path) throws Exception {
    return send(path, null, null, "GET", "");
  }

  private HttpResponse<String> post(String path, String body) throws Exception {
    return send(path, JSON, null, "POST", body);
  }

  /** {@code *} makes something new; null sends no condition. */
  private HttpResponse<String> put(String path, String type, String body, String tag)
      throws Exception {
    return send(path, type, tag, "PUT", body);
  }

  private HttpResponse<String> send(String path, String type, String tag, String verb, String body)
      throws Exception {
    var request =
        HttpRequest.newBuilder(URI.create(server.address() + path))
            .method(
                verb, verb.equals("GET") ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
    if (type != null) {
      request.header("Content-Type", type);
    }
    if (tag != null) {
      request.header(tag.equals("*") ? "If-None-Match" : "If-Match", tag);
    }
    return http.send(request.build(), BodyHandlers.ofString());
  }
}
