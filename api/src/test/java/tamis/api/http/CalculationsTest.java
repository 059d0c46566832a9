package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.closeTo;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasKey;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;
import static org.hamcrest.Matchers.startsWith;

import java.io.IOException;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class CalculationsTest {
  private static final String STICK = "quantity=1+stick&ingredient=butter-unsalted&unit=g";
  private static final String ADDRESS = "/v1/calculations/conversion?" + STICK;
  private static final String BODY =
      "{\"quantity\":\"1 stick\",\"ingredient\":\"butter-unsalted\",\"unit\":\"g\"}";

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
  void post_and_get_give_the_same_answer() {
    var got = served.ask().get(ADDRESS);
    var posted = served.json(BODY).post("/v1/calculations/conversion");
    got.then()
        .statusCode(200)
        .contentType("application/json")
        .body("calculation", is("conversion"))
        .body("result.unit", is("g"))
        .body("revision", is(0))
        .body("sources", not(hasSize(0)));
    assertThat(got.jsonPath().getDouble("result.amount")).isEqualTo(113.4);
    assertThat(posted.body().asString()).isEqualTo(got.body().asString());
  }

  @Test
  void a_text_is_one_number_and_nothing_else() {
    served
        .ask()
        .get(ADDRESS + "&format=text")
        .then()
        .statusCode(200)
        .header("Content-Type", "text/plain; charset=utf-8")
        .body(equalTo("113.4"));
    served.ask().get(ADDRESS + "&format=text&decimal=comma").then().body(equalTo("113,4"));
    served.ask().get(ADDRESS + "&format=text&pick=/unit").then().body(equalTo("g"));
  }

  @Test
  void an_address_that_ends_in_csv_is_a_table() {
    var table =
        served
            .ask()
            .get("/v1/calculations/conversion.csv?" + STICK)
            .then()
            .statusCode(200)
            .header("Content-Type", "text/csv; charset=utf-8")
            .extract()
            .body()
            .asString();
    assertThat(table.split("\r\n")).hasSize(2);
    assertThat(table).startsWith("amount,unit");
    served.ask().get("/v1/calculations/conversion.csv?format=text&" + STICK).then().statusCode(422);
  }

  @ParameterizedTest(name = "{0} → {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "*/*                                  | application/json",
        "text/plain                           | text/plain",
        "text/csv;q=0.5, text/plain;q=0.4     | text/csv",
        "application/json, */*;q=0.5          | application/json",
        "text/html, */*;q=0.1                 | application/json",
      })
  void the_caller_chooses_the_form_by_accept(String accept, String type) {
    served
        .ask()
        .header("Accept", accept)
        .get(ADDRESS)
        .then()
        .statusCode(200)
        .contentType(startsWith(type));
  }

  @Test
  void a_form_that_is_not_offered_is_406() {
    served
        .ask()
        .header("Accept", "image/png")
        .get(ADDRESS)
        .then()
        .statusCode(406)
        .body("faults[0].code", is("unacceptable"));
    served
        .ask()
        .get(ADDRESS + "&format=png")
        .then()
        .statusCode(406)
        .body("faults[0].pointer", is("/format"));
  }

  @Test
  void all_faults_of_input_and_options_are_told_at_once() {
    served
        .ask()
        .get(
            "/v1/calculations/conversion?quantity=3&ingredient=buter&unitt=g&decimal=semicolon&k=7")
        .then()
        .statusCode(422)
        .contentType("application/problem+json")
        .body("status", is(422))
        .body("faults.pointer", hasItem("/quantity"))
        .body("faults.pointer", hasItem("/ingredient"))
        .body("faults.pointer", hasItem("/unitt"))
        .body("faults.pointer", hasItem("/unit"))
        .body("faults.pointer", hasItem("/decimal"))
        .body("faults", hasSize(5));
  }

  @Test
  void faults_come_as_text_to_those_who_ask() {
    for (var rest :
        new String[] {
          "conversion?quantity=x&unit=g&errors=text",
          "no-such?errors=text",
          "conversion?a=%ff&errors=text"
        }) {
      served
          .ask()
          .get("/v1/calculations/" + rest)
          .then()
          .statusCode(200)
          .contentType("text/plain")
          .body(startsWith("! "))
          .body(not(containsString("\n")));
    }
    served
        .json("{")
        .post("/v1/calculations/conversion?errors=text")
        .then()
        .statusCode(200)
        .body(startsWith("! "));
  }

  @ParameterizedTest(name = "{0} → {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "{\"quantity\":\"1 g\",\"unit\":\"kg\"             | 400 | not-json",
        "{\"unit\":\"kg\",\"unit\":\"g\"}                  | 400 | duplicate-name",
        "{\"quantity\":null,\"unit\":\"kg\"}               | 422 | null",
        "{\"quantity\":\"1 g\",\"unit\":\"kg\",\"x\":1}    | 422 | unknown-field",
        "{\"quantity\":1e999999999,\"unit\":\"kg\"}        | 422 | out-of-bounds",
        "[]                                                | 422 | wrong-type",
        "7                                                 | 422 | wrong-type",
      })
  void a_body_that_cannot_be_meant_is_told_what_is_wrong(String body, int status, String code) {
    served
        .json(body)
        .post("/v1/calculations/conversion")
        .then()
        .statusCode(status)
        .body("faults.code", hasItem(code));
  }

  @Test
  void a_body_that_is_no_utf_8_is_400() {
    served
        .ask()
        .header("Content-Type", "application/json")
        .body(new byte[] {'{', '"', (byte) 0xE9, '"', ':', '1', '}'})
        .post("/v1/calculations/conversion")
        .then()
        .statusCode(400)
        .body("faults[0].code", is("not-utf8"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "application/x-www-form-urlencoded",
        "text/plain",
        "application/json; charset=iso-8859-1",
        "application/jsonp"
      })
  void a_body_of_another_type_is_415_and_the_wanted_type_is_named(String type) throws IOException {
    var answer = Raw.post(served.port(), "/v1/calculations/conversion", type, BODY);
    assertThat(answer.status()).isEqualTo(415);
    assertThat(answer.body()).contains("wanted is application/json");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "application/json",
        "application/json;charset=UTF-8",
        "application/json; charset=\"utf-8\"",
        "Application/JSON",
        "application/ld+json"
      })
  void a_body_of_json_is_read_however_its_type_is_written(String type) throws IOException {
    var answer = Raw.post(served.port(), "/v1/calculations/conversion", type, BODY);
    assertThat(answer.status()).isEqualTo(200);
  }

  @Test
  void an_unknown_calculation_is_404_with_a_suggestion() {
    served
        .ask()
        .get("/v1/calculations/conversoin?x=1")
        .then()
        .statusCode(404)
        .body("detail", containsString("did you mean conversion"));
    served
        .json(BODY)
        .post("/v1/calculations/conversoin")
        .then()
        .statusCode(404)
        .body("faults[0].code", is("unknown-calculation"));
  }

  @Test
  void options_work_in_the_query_of_post_and_inputs_do_not() {
    served
        .json(BODY)
        .post("/v1/calculations/conversion?format=text")
        .then()
        .statusCode(200)
        .body(equalTo("113.4"));
    served
        .json(BODY)
        .post("/v1/calculations/conversion?sources=no")
        .then()
        .body("$", not(hasKey("sources")));
    served
        .json(BODY)
        .post("/v1/calculations/conversion?unit=kg")
        .then()
        .statusCode(422)
        .body("faults[0].code", is("unknown-field"));
  }

  @Test
  void the_catalogue_lists_what_can_be_called() {
    served
        .ask()
        .get("/v1/calculations")
        .then()
        .statusCode(200)
        .body("items.name", hasItem("conversion"))
        .body("items.name", hasItem("scaling"))
        .body("items.find { it.name == 'conversion' }.plugin", is("conversion"));
  }

  @Test
  void a_stored_formula_is_scaled_by_its_id_and_by_its_revision() {
    try (var own = Served.usual()) {
      own.holding("cream", "{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"1 kg\"}]}");
      var address = "/v1/calculations/scaling?formula=cream&to.factor=2&format=text&pick=/grams";
      own.ask().get(address).then().statusCode(200).body(equalTo("2000"));
      own.json("{\"lines\":[{\"ingredient\":\"cream-heavy\",\"quantity\":\"3 kg\"}]}")
          .header("If-Match", "\"1\"")
          .put("/v1/formulas/cream")
          .then()
          .statusCode(200);
      own.ask().get(address).then().statusCode(200).body(equalTo("6000"));
      own.ask()
          .get(address.replace("cream&", "cream@1&"))
          .then()
          .statusCode(200)
          .body(equalTo("2000"));
      own.ask().get(address.replace("cream&", "cream@7&")).then().statusCode(422);
      own.json("{\"formula\":\"cream\",\"to\":{\"mass\":\"1.5 kg\"}}")
          .post("/v1/calculations/scaling")
          .then()
          .statusCode(200)
          .body("result.factor.toDouble()", closeTo(0.5, 1e-12))
          .body("revision", is(2));
    }
  }

  @Test
  void nothing_of_the_inside_is_told() {
    for (var body : new String[] {"{", "\u0000", "{\"quantity\":{}}", "nul"}) {
      var said = served.json(body).post("/v1/calculations/conversion").body().asString();
      assertThat(said).doesNotContain("jackson", "Exception", "tamis.", "java.", "at [");
    }
  }
}
