package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FormulaDocumentsTest {
  private static final String CREAM =
      "{\"id\":\"cream\",\"title\":\"Coffee cream\","
          + "\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}";
  private static final String CAKE =
      "{\"title\":\"Cake\",\"lines\":[{\"formula\":\"cream\",\"quantity\":\"200 g\"},"
          + "{\"ingredient\":\"egg\",\"quantity\":\"3 each\"}]}";

  private Served served;

  @BeforeEach
  void open() {
    served = Served.usual();
  }

  @AfterEach
  void close() {
    served.close();
  }

  @Test
  void a_formula_is_created_at_its_id() {
    served
        .json(CREAM)
        .post("/v1/formulas")
        .then()
        .statusCode(201)
        .header("Location", "/v1/formulas/cream")
        .header("ETag", "\"1\"")
        .body("title", is("Coffee cream"));
  }

  @Test
  void what_is_read_is_what_put_takes() {
    served.json(CREAM).post("/v1/formulas");
    var read = served.ask().get("/v1/formulas/cream");
    assertThat(read.header("ETag")).isEqualTo("\"1\"");
    served
        .json(read.body().asString())
        .header("If-Match", "\"1\"")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(200)
        .header("ETag", "\"2\"");
    assertThat(served.ask().get("/v1/formulas/cream").body().asString())
        .isEqualTo(read.body().asString());
  }

  @Test
  void an_id_that_exists_is_a_conflict_for_post_and_a_failed_condition_for_put() {
    served.json(CREAM).post("/v1/formulas");
    served
        .json(CREAM)
        .post("/v1/formulas")
        .then()
        .statusCode(409)
        .body("faults[0].code", is("exists"));
    served
        .json(CREAM)
        .header("If-None-Match", "*")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(412);
  }

  @Test
  void a_change_needs_a_condition_that_holds() {
    served
        .json(CREAM)
        .put("/v1/formulas/cream")
        .then()
        .statusCode(428)
        .body("faults[0].allowed", is("If-None-Match: *"));
    served.json(CREAM).header("If-Match", "*").put("/v1/formulas/cream").then().statusCode(412);
    served
        .json(CREAM)
        .header("If-None-Match", "*")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(201);
    served.json(CREAM).put("/v1/formulas/cream").then().statusCode(428);
    served.json(CREAM).header("If-Match", "\"2\"").put("/v1/formulas/cream").then().statusCode(412);
    served
        .json(CREAM)
        .header("If-Match", "W/\"1\"")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(412);
    served
        .json(CREAM)
        .header("If-Match", "\"7\", \"1\"")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(200);
    served
        .json(CREAM)
        .header("If-Match", "*")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(200)
        .header("ETag", "\"3\"");
  }

  @Test
  void a_reader_who_has_the_revision_is_told_so() {
    served.json(CREAM).post("/v1/formulas");
    served
        .ask()
        .header("If-None-Match", "\"1\"")
        .get("/v1/formulas/cream")
        .then()
        .statusCode(304)
        .header("ETag", "\"1\"")
        .body(equalTo(""));
    served.ask().header("If-None-Match", "\"2\"").get("/v1/formulas/cream").then().statusCode(200);
  }

  @Test
  void a_deleted_formula_is_gone_and_its_revisions_stay() {
    served.json(CREAM).post("/v1/formulas");
    served.ask().delete("/v1/formulas/cream").then().statusCode(428);
    served.ask().header("If-Match", "\"9\"").delete("/v1/formulas/cream").then().statusCode(412);
    served.ask().header("If-Match", "\"1\"").delete("/v1/formulas/cream").then().statusCode(204);
    served
        .ask()
        .get("/v1/formulas/cream")
        .then()
        .statusCode(404)
        .body("detail", containsString("was deleted"));
    served
        .ask()
        .get("/v1/formulas/cream/revisions/1")
        .then()
        .statusCode(200)
        .header("ETag", "\"1\"");
    served
        .ask()
        .get("/v1/formulas/cream/revisions/2")
        .then()
        .statusCode(404)
        .body("detail", containsString("deleted by its revision 2"));
    served.ask().get("/v1/formulas/cream/revisions/3").then().statusCode(404);
    served.json(CREAM).post("/v1/formulas").then().statusCode(201).header("ETag", "\"3\"");
    served
        .ask()
        .get("/v1/formulas/cream/revisions")
        .then()
        .statusCode(200)
        .body("items.revision", is(List.of(1, 2, 3)))
        .body("items.deleted", is(List.of(false, true, false)))
        .body("items.author", is(List.of("local", "local", "local")));
  }

  @Test
  void a_formula_that_another_uses_is_not_deleted() {
    served.json(CREAM).post("/v1/formulas");
    served.holding("cake", CAKE);
    served
        .ask()
        .header("If-Match", "\"1\"")
        .delete("/v1/formulas/cream")
        .then()
        .statusCode(409)
        .body("faults[0].code", is("in-use"))
        .body("detail", containsString("cake"));
  }

  @Test
  void revisions_come_in_pages() {
    served.json(CREAM).post("/v1/formulas");
    for (int i = 1; i < 5; i++) {
      served
          .json(CREAM)
          .header("If-Match", "\"" + i + "\"")
          .put("/v1/formulas/cream")
          .then()
          .statusCode(200);
    }
    var first = served.ask().get("/v1/formulas/cream/revisions?limit=3").jsonPath();
    assertThat(first.getList("items.revision")).hasToString("[1, 2, 3]");
    var rest =
        served
            .ask()
            .get("/v1/formulas/cream/revisions?limit=3&cursor=" + first.getString("next"))
            .jsonPath();
    assertThat(rest.getList("items.revision")).hasToString("[4, 5]");
    assertThat(rest.getString("next")).isNull();
  }

  @Test
  void all_faults_of_a_document_are_told_at_once() {
    served
        .json(
            "{\"titel\":\"x\",\"lines\":[{\"ingredient\":\"no-such-thing\",\"quantity\":\"1 kg\"},{\"ingredient\":\"egg\",\"quantity\":\"3\"}]}")
        .post("/v1/formulas")
        .then()
        .statusCode(422)
        .body("faults.pointer", hasItem("/id"))
        .body("faults.pointer", hasItem("/titel"))
        .body("faults.pointer", hasItem("/lines/0/ingredient"))
        .body("faults.pointer", hasItem("/lines/1/quantity"))
        .body("faults", hasSize(4));
    served.ask().get("/v1/formulas").then().body("items", hasSize(0));
  }

  @Test
  void the_address_and_the_document_agree_on_the_id() {
    served
        .json(CREAM)
        .header("If-None-Match", "*")
        .put("/v1/formulas/other")
        .then()
        .statusCode(422)
        .body("faults[0].pointer", is("/id"));
  }

  @Test
  void formulas_do_not_contain_themselves() {
    served.json(CREAM).post("/v1/formulas");
    served.holding("cake", CAKE);
    served
        .json("{\"lines\":[{\"formula\":\"cake\",\"quantity\":\"1 kg\"}]}")
        .header("If-Match", "\"1\"")
        .put("/v1/formulas/cream")
        .then()
        .statusCode(422)
        .body("faults[0].code", is("cycle"))
        .body("detail", containsString("cream → cake → cream"));
  }

  @Test
  void lists_come_in_pages_that_hold_each_document_once() {
    for (char letter = 'a'; letter <= 'g'; letter++) {
      served.holding("cream-" + letter, CREAM.replace("\"id\":\"cream\",", ""));
    }
    var seen = new ArrayList<String>();
    var address = "/v1/formulas?limit=3";
    for (String next = ""; next != null; ) {
      var page = served.ask().get(address + next).jsonPath();
      seen.addAll(page.getList("items.id"));
      next = page.getString("next") == null ? null : "&cursor=" + page.getString("next");
    }
    assertThat(seen)
        .containsExactly(
            "cream-a", "cream-b", "cream-c", "cream-d", "cream-e", "cream-f", "cream-g");
  }

  @Test
  void a_list_is_searched_by_beginnings_of_words() {
    served.json(CREAM).post("/v1/formulas");
    served.holding("cake", CAKE);
    served
        .ask()
        .get("/v1/formulas?q=COFF")
        .then()
        .body("items.id", is(List.of("cream")))
        .body("next", nullValue());
    served.ask().get("/v1/formulas?q=egg+cake").then().body("items.id", is(List.of("cake")));
    served.ask().get("/v1/formulas?q=nougat").then().body("items", hasSize(0));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "limit=0",
        "limit=1001",
        "limit=x",
        "limit=-1",
        "cursor=%20",
        "nosuch=1",
        "limit=1&limit=2"
      })
  void a_list_refuses_what_cannot_be_meant(String query) {
    int status = served.ask().get("/v1/formulas?" + query).statusCode();
    assertThat(status).isEqualTo(query.contains("&") ? 400 : 422);
  }

  @Test
  void a_revision_that_is_no_number_is_not_there() {
    served.json(CREAM).post("/v1/formulas");
    for (var number : List.of("0", "-1", "x", "01", "99999999999999")) {
      served.ask().get("/v1/formulas/cream/revisions/" + number).then().statusCode(404);
    }
    served.ask().get("/v1/formulas/nougat/revisions").then().statusCode(404);
  }
}
