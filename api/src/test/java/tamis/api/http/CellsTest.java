package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.io.StringReader;
import java.math.BigDecimal;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every request of the demo as an address: its text, CSV and JSON tell the same figures. */
class CellsTest {
  private static final Path REQUESTS = Path.of("../demo-data/requests");
  private static final String CALCULATIONS = "/v1/calculations/";
  private static final int MOST_FIGURES = 40;

  private static final ObjectMapper JSON =
      new ObjectMapper().enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS);

  private static Served served;

  @BeforeAll
  static void open() throws IOException {
    served = Served.usual();
    var waiting = new LinkedHashMap<Path, String>();
    for (var kind : List.of("ingredients", "formulas", "trials")) {
      try (var files = Files.list(Path.of("../demo-data/" + kind))) {
        for (var file : files.sorted().toList()) {
          waiting.put(file, "/v1/" + kind);
        }
      }
    }
    for (int before = -1; before != waiting.size(); ) {
      before = waiting.size();
      for (var file : List.copyOf(waiting.keySet())) {
        var answer = served.json(Files.readString(file)).post(waiting.get(file));
        if (answer.statusCode() == 201) {
          waiting.remove(file);
        }
      }
    }
    assertThat(waiting).as("documents of the demo that are refused").isEmpty();
    served
        .ask()
        .header("Content-Type", "text/csv; charset=utf-8")
        .header("If-None-Match", "*")
        .body(Files.readAllBytes(Path.of("../demo-data/prices.csv")))
        .put("/v1/prices")
        .then()
        .statusCode(200);
  }

  @AfterAll
  static void close() {
    served.close();
  }

  /** A request of the demo as calculation and query. */
  record Address(String calculation, String query) {
    String with(String ending, String... more) {
      var all = new ArrayList<>(List.of(query));
      all.addAll(List.of(more));
      all.removeIf(String::isEmpty);
      return CALCULATIONS + calculation + ending + "?" + String.join("&", all);
    }

    @Override
    public String toString() {
      return calculation + "?" + query;
    }
  }

  static Stream<Address> addresses() throws IOException {
    var addresses = new ArrayList<Address>();
    try (var files = Files.list(REQUESTS)) {
      for (var file : files.sorted().toList()) {
        var parts = Files.readString(file).strip().split("\r?\n\r?\n", 2);
        var target = parts[0].split(" ", 3)[1].strip().split("\\?", 2);
        if (!target[0].startsWith(CALCULATIONS)) {
          continue;
        }
        var name = target[0].substring(CALCULATIONS.length()).split("\\s|\\.csv")[0];
        var query = new ArrayList<String>();
        if (parts[0].startsWith("GET")) {
          for (var part : target[1].split("\\s")[0].split("&")) {
            if (!part.startsWith("format=") && !part.startsWith("pick=")) {
              query.add(part);
            }
          }
        } else {
          flat("", JSON.readTree(parts[1]), query);
        }
        addresses.add(new Address(name, String.join("&", query)));
      }
    }
    return addresses.stream();
  }

  /** An input as the names and values of an address. */
  private static void flat(String name, JsonNode value, List<String> query) {
    if (value.isObject()) {
      value.properties().forEach(e -> flat(dot(name) + e.getKey(), e.getValue(), query));
    } else if (value.isArray()) {
      for (int i = 0; i < value.size(); i++) {
        flat(value.get(i).isContainerNode() ? dot(name) + i : name, value.get(i), query);
      }
    } else {
      query.add(name + "=" + URLEncoder.encode(value.asText(), StandardCharsets.UTF_8));
    }
  }

  private static String dot(String name) {
    return name.isEmpty() ? "" : name + ".";
  }

  private static String pick(String pointer) {
    return "pick=" + URLEncoder.encode(pointer, StandardCharsets.UTF_8);
  }

  private static JsonNode json(Address address) throws IOException {
    var answer = served.ask().get(address.with(""));
    assertThat(answer.statusCode()).as(answer.asString()).isEqualTo(200);
    return JSON.readTree(answer.asString()).get("result");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("addresses")
  void every_figure_as_text_is_that_of_json(Address address) throws IOException {
    var figures = new LinkedHashMap<String, JsonNode>();
    figures("", json(address), figures);
    assertThat(figures).isNotEmpty();
    int step = 1 + figures.size() / MOST_FIGURES;
    int place = 0;
    for (var figure : figures.entrySet()) {
      if (place++ % step != 0) {
        continue;
      }
      var text = served.ask().get(address.with("", "format=text", pick(figure.getKey())));
      assertThat(text.statusCode()).as(figure.getKey() + ": " + text.asString()).isEqualTo(200);
      assertThat(text.contentType()).isEqualTo("text/plain; charset=utf-8");
      assertThat(new BigDecimal(text.asString()))
          .as(figure.getKey())
          .isEqualByComparingTo(figure.getValue().decimalValue());
    }
  }

  private static void figures(String pointer, JsonNode node, Map<String, JsonNode> into) {
    if (node.isNumber()) {
      into.put(pointer, node);
    } else if (node.isArray()) {
      for (int i = 0; i < node.size(); i++) {
        figures(pointer + "/" + i, node.get(i), into);
      }
    } else {
      node.properties()
          .forEach(e -> figures(pointer + "/" + escaped(e.getKey()), e.getValue(), into));
    }
  }

  private static String escaped(String name) {
    return name.replace("~", "~0").replace("/", "~1");
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("addresses")
  void every_table_as_csv_is_that_of_json(Address address) throws IOException {
    var result = json(address);
    for (var field : result.properties()) {
      var list = field.getValue();
      if (list.isArray() && !list.isEmpty() && list.get(0).isObject()) {
        var csv = served.ask().get(address.with(".csv", pick("/" + field.getKey())));
        assertThat(csv.statusCode()).as(csv.asString()).isEqualTo(200);
        agree(read(csv.asString()), list);
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("addresses")
  void the_usual_table_is_under_csv_and_has_rows(Address address) throws IOException {
    var csv = served.ask().get(address.with(".csv"));
    assertThat(csv.statusCode()).as(csv.asString()).isEqualTo(200);
    assertThat(csv.contentType()).isEqualTo("text/csv; charset=utf-8");
    assertThat(csv.asString()).endsWith("\r\n").doesNotContain("\uFEFF");
    assertThat(read(csv.asString())).isNotEmpty();
    assertThat(served.ask().get(address.with("", "format=csv")).asString())
        .isEqualTo(csv.asString());
  }

  private static List<CSVRecord> read(String csv) throws IOException {
    var rfc4180 = CSVFormat.RFC4180.builder().setHeader().setSkipHeaderRecord(true).get();
    try (var parser = rfc4180.parse(new StringReader(csv))) {
      return parser.getRecords();
    }
  }

  private static void agree(List<CSVRecord> rows, JsonNode list) {
    assertThat(rows).hasSameSizeAs(list);
    for (int i = 0; i < list.size(); i++) {
      for (var cell : rows.get(i).toMap().entrySet()) {
        var told = list.get(i).at("/" + cell.getKey().replace('.', '/'));
        if (told.isNumber()) {
          assertThat(new BigDecimal(cell.getValue()))
              .as(cell.getKey())
              .isEqualByComparingTo(told.decimalValue());
        } else if (told.isTextual()) {
          assertThat(cell.getValue()).as(cell.getKey()).isIn(told.asText(), "'" + told.asText());
        } else if (told.isBoolean()) {
          assertThat(cell.getValue()).as(cell.getKey()).isEqualTo(told.asText());
        }
      }
    }
  }

  @ParameterizedTest(name = "{0}")
  @MethodSource("addresses")
  void head_tells_what_get_does_in_every_form(Address address) throws IOException {
    for (var form : List.of(address.with(""), address.with(".csv"), address.with("", "bom=yes"))) {
      var get = Raw.ask(served.port(), "GET", form);
      var head = Raw.ask(served.port(), "HEAD", form);
      assertThat(head.status()).isEqualTo(get.status()).isEqualTo(200);
      assertThat(head.headers()).isEqualTo(get.headers());
      assertThat(head.body()).isEmpty();
    }
  }

  @Test
  void every_request_of_the_demo_is_among_them() throws IOException {
    assertThat(addresses()).hasSizeGreaterThanOrEqualTo(20);
  }

  // -- what goes wrong in a cell ------------------------------------------------------------------

  private static String cell(String query) {
    var answer = served.ask().get(CALCULATIONS + query + "&format=text&errors=text");
    assertThat(answer.statusCode()).isEqualTo(200);
    assertThat(answer.contentType()).isEqualTo("text/plain; charset=utf-8");
    return answer.asString();
  }

  @Test
  void a_comma_number_is_told_in_the_cell() {
    assertThat(cell("conversion?quantity=2,25+kg&unit=g")).startsWith("! ").contains("2,25");
    assertThat(cell("conversion?quantity=2,25+kg&unit=g&decimal=comma")).isEqualTo("2250");
  }

  @Test
  void a_text_pick_on_a_table_is_told_in_the_cell() {
    assertThat(cell("scaling?formula=brioche&pick=/lines")).startsWith("! ").contains("/lines");
    assertThat(cell("scaling?formula=brioche&pick=/no-such")).startsWith("! ");
  }

  @Test
  void the_bill_is_looked_up_by_ingredient() throws IOException {
    var butter = json(new Address("scaling", "formula=brioche")).at("/bill/butter-unsalted/grams");
    assertThat(new BigDecimal(cell("scaling?formula=brioche&pick=/bill/butter-unsalted/grams")))
        .isEqualByComparingTo(butter.decimalValue());
  }

  @Test
  void an_address_of_20_000_characters_is_refused_and_the_next_is_answered() throws IOException {
    var address = CALCULATIONS + "conversion?quantity=1+kg&unit=g&k=" + "x".repeat(20_000);
    assertThat(Raw.ask(served.port(), "GET", address).status()).isEqualTo(414);
    assertThat(Raw.ask(served.port(), "HEAD", address).status()).isEqualTo(414);
    assertThat(cell("conversion?quantity=1+kg&unit=g")).isEqualTo("1000");
  }
}
