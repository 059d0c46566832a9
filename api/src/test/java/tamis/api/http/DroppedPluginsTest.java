package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.plugin.PluginJar;

/** What callers see of plugins that somebody else made. */
class DroppedPluginsTest {
  private static final Duration LIMIT = Duration.ofSeconds(1);
  private static final String WEIGHING = "/v1/calculations/weighing?grams=5";

  @TempDir private Path directory;

  private Served served() {
    return Served.with().plugins(Served.plugins(directory, LIMIT)).open();
  }

  private Served working(String code) throws IOException {
    PluginJar.of("dropped", "weighing").working(code).in(directory, "dropped.jar");
    return served();
  }

  private static void isBroken(Served served) {
    served
        .ask()
        .get(WEIGHING)
        .then()
        .statusCode(500)
        .body("faults[0].code", is("plugin-failed"))
        .body("detail", containsString("plugin `dropped`"))
        .body("detail", not(containsString("Exception")))
        .body("detail", not(containsString("dropped.Dropped")));
    served.ask().get("/v1/calculations/conversion?quantity=1+kg&unit=g").then().statusCode(200);
  }

  @Test
  void it_is_called_listed_and_described_as_ours_are() throws IOException {
    try (var served = working("return Answer.of(new Weighed(input.grams() * 2));")) {
      served.ask().get(WEIGHING + "&format=text").then().statusCode(200).body(equalTo("10"));
      served
          .json("{\"grams\":7}")
          .post("/v1/calculations/weighing")
          .then()
          .statusCode(200)
          .body("result.grams", is(14));
      served
          .json("{\"gram\":7}")
          .post("/v1/calculations/weighing")
          .then()
          .statusCode(422)
          .body("faults.code", hasItem("unknown-field"));
      served.ask().get("/v1/calculations").then().body("items.name", hasItem("weighing"));
      served
          .ask()
          .get("/openapi.json")
          .then()
          .body("paths.'/v1/calculations/weighing'.post.operationId", not(is("")));
      served
          .ask()
          .get("/health/ready")
          .then()
          .body("plugins.find { it.name == 'dropped' }.origin", is("dropped.jar"))
          .body("plugins.find { it.name == 'dropped' }.switchedOff", is(false));
    }
  }

  @Test
  void one_that_throws_is_named() throws IOException {
    try (var served = working("throw new IllegalStateException(\"secret of /etc\");")) {
      isBroken(served);
      served.ask().get(WEIGHING).then().body("detail", not(containsString("secret")));
    }
  }

  @Test
  void one_that_answers_nothing_is_named() throws IOException {
    try (var served = working("return null;")) {
      isBroken(served);
    }
  }

  @Test
  void one_that_calls_itself_without_end_is_named() throws IOException {
    try (var served = working("return calculate(input, kitchen);")) {
      isBroken(served);
    }
  }

  @Test
  void one_that_does_not_link_is_named() throws IOException {
    try (var served = working("throw new NoSuchMethodError(\"built against something else\");")) {
      isBroken(served);
    }
  }

  @Test
  void one_that_runs_out_of_memory_is_named() throws IOException {
    try (var served = working("throw new OutOfMemoryError(\"Java heap space\");")) {
      isBroken(served);
    }
  }

  @Test
  void one_that_gives_no_number_is_named() throws IOException {
    try (var served = working("return Answer.of(new Weighed(Double.NaN));")) {
      served
          .ask()
          .get(WEIGHING)
          .then()
          .statusCode(500)
          .body("faults[0].pointer", is("/result/grams"));
    }
  }

  @Test
  void its_own_refusal_is_told_as_it_is() throws IOException {
    try (var served =
        working(
            "throw tamis.engine.fault.Refusal.of("
                + "tamis.engine.fault.FaultCode.IMPOSSIBLE, \"/grams\", \"too heavy\");")) {
      served
          .ask()
          .get(WEIGHING)
          .then()
          .statusCode(422)
          .body("faults[0].pointer", is("/grams"))
          .body("detail", is("too heavy"));
    }
  }

  @Test
  void calculations_that_call_each_other_without_end_are_refused() throws IOException {
    try (var served =
        working(
            "return (Answer<Weighed>) kitchen.calculate(\"weighing\", java.util.Map.of(\"grams\", 1));")) {
      served.ask().get(WEIGHING).then().statusCode(422).body("faults[0].code", is("too-deep"));
    }
  }

  @Test
  void one_that_does_not_end_is_cut_and_after_a_few_calls_switched_off() throws IOException {
    try (var served = working(PluginJar.ENDLESS)) {
      for (int i = 0; i < 3; i++) {
        served
            .ask()
            .get(WEIGHING)
            .then()
            .statusCode(504)
            .body("faults[0].code", is("too-slow"))
            .body("detail", containsString("plugin `dropped`"));
      }
      long from = System.nanoTime();
      served
          .ask()
          .get(WEIGHING)
          .then()
          .statusCode(503)
          .header("Retry-After", not(is("")))
          .body("faults[0].code", is("switched-off"));
      assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(LIMIT);
      served
          .ask()
          .get("/health/ready")
          .then()
          .statusCode(200)
          .body("plugins.find { it.name == 'dropped' }.switchedOff", is(true))
          .body("plugins.find { it.name == 'conversion' }.switchedOff", is(false));
      served
          .ask()
          .get("/v1/calculations")
          .then()
          .body("items.find { it.name == 'weighing' }.switchedOff", is(true));
      served.ask().get("/v1/calculations/conversion?quantity=1+kg&unit=g").then().statusCode(200);
    }
  }

  @Test
  void one_that_is_slow_now_and_then_stays_on() throws IOException {
    var now =
        "try { if (input.grams() > 5) Thread.sleep(60_000); } catch (InterruptedException e) { }"
            + " return Answer.of(input);";
    try (var served = working(now)) {
      for (int i = 0; i < 4; i++) {
        served.ask().get("/v1/calculations/weighing?grams=" + (6 + i)).then().statusCode(504);
        served.ask().get("/v1/calculations/weighing?grams=" + (i + 1)).then().statusCode(200);
      }
    }
  }

  @Test
  void the_inner_one_is_named_when_one_calls_another_that_does_not_end() throws IOException {
    PluginJar.of("inner", "endless").working(PluginJar.ENDLESS).in(directory, "inner.jar");
    PluginJar.of("outer", "weighing")
        .working(
            "return (Answer<Weighed>) kitchen.calculate(\"endless\", java.util.Map.of(\"grams\", 1));")
        .in(directory, "outer.jar");
    try (var served = served()) {
      served
          .ask()
          .get(WEIGHING)
          .then()
          .statusCode(504)
          .body("detail", containsString("plugin `inner`"));
    }
  }

  @Test
  void two_plugins_with_classes_of_one_name_do_not_meet() throws IOException {
    PluginJar.of("one", "weighing")
        .working("return Answer.of(new Weighed(1));")
        .in(directory, "one.jar");
    PluginJar.of("two", "weighing-two")
        .working("return Answer.of(new Weighed(2));")
        .in(directory, "two.jar");
    try (var served = served()) {
      served.ask().get(WEIGHING + "&format=text").then().body(equalTo("1"));
      served
          .ask()
          .get("/v1/calculations/weighing-two?grams=5&format=text")
          .then()
          .body(equalTo("2"));
    }
  }

  @Test
  void its_table_is_served_as_ours_are() throws IOException {
    PluginJar.of("dropped", "weighing").bringing("crumbs").in(directory, "crumbs.jar");
    try (var served = served()) {
      served.ask().get("/v1/tables/crumbs").then().statusCode(200).body("rows[0].grams", is("1"));
      served.ask().get("/v1/tables").then().body("items.name", hasItem("crumbs"));
    }
  }

  @Test
  void one_that_was_refused_is_told_with_the_reason() throws IOException {
    PluginJar.of("dropped", "weighing").builtAgainst("99").in(directory, "new.jar");
    try (var served = served()) {
      served
          .ask()
          .get("/health/ready")
          .then()
          .statusCode(200)
          .body("refused[0].jar", is("new.jar"))
          .body("refused[0].why", containsString("contract 99"));
      served.ask().get(WEIGHING).then().statusCode(404);
    }
  }
}
