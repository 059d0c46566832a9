package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

class TablesTest {
  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.usual();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  @Test
  void tables_of_the_engine_and_of_plugins_are_listed() {
    served
        .ask()
        .get("/v1/tables")
        .then()
        .statusCode(200)
        .body("items.name", hasItems("densities", "pans", "units"))
        .body("items.find { it.name == 'densities' }.rows", not(is(0)));
  }

  @Test
  void each_row_has_its_source() {
    served
        .ask()
        .get("/v1/tables/densities")
        .then()
        .statusCode(200)
        .body("columns", hasItem("source"))
        .body("rows.findAll { it.source == null }.size()", is(0))
        .body("rows.findAll { it.locator == null }.size()", is(0));
  }

  @Test
  void a_table_is_csv_by_ending_query_or_accept() {
    var byEnding = served.ask().get("/v1/tables/pans.csv");
    byEnding.then().statusCode(200).header("Content-Type", "text/csv; charset=utf-8");
    var text = byEnding.body().asString();
    assertThat(served.ask().get("/v1/tables/pans?format=csv").body().asString()).isEqualTo(text);
    assertThat(served.ask().header("Accept", "text/csv").get("/v1/tables/pans").body().asString())
        .isEqualTo(text);
    var columns = served.ask().get("/v1/tables/pans").jsonPath().getList("columns");
    assertThat(text.lines().findFirst().orElseThrow().split(",")).hasSize(columns.size());
    assertThat(text.lines().count())
        .isEqualTo(1 + served.ask().get("/v1/tables/pans").jsonPath().getList("rows").size());
  }

  @Test
  void options_of_csv_are_read() {
    assertThat(served.ask().get("/v1/tables/pans.csv?bom=yes").body().asByteArray())
        .startsWith(0xEF, 0xBB, 0xBF);
    served.ask().get("/v1/tables/pans.csv?decimal=comma").then().body(containsString(";"));
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    served
        .ask()
        .get("/v1/tables/pan")
        .then()
        .statusCode(404)
        .body("detail", containsString("did you mean pans"));
    served.ask().get("/v1/tables/pans.csv?format=json").then().statusCode(422);
    served.ask().get("/v1/tables/pans?format=text").then().statusCode(406);
    served
        .ask()
        .get("/v1/tables/pans?decimal=dot")
        .then()
        .statusCode(422)
        .body("faults[0].pointer", is("/decimal"));
    served
        .ask()
        .get("/v1/tables/pans?bom=true")
        .then()
        .statusCode(422)
        .body("faults[0].pointer", is("/bom"));
    served.ask().get("/v1/tables/pans?pick=/0").then().statusCode(422);
    served.ask().header("Accept", "image/png").get("/v1/tables/pans").then().statusCode(406);
    served
        .ask()
        .get("/v1/tables?q=1")
        .then()
        .statusCode(422)
        .contentType(startsWith("application/problem+json"));
  }
}
