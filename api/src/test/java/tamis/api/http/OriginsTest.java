package tamis.api.http;

import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.nullValue;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class OriginsTest {
  private static final String SHOP = "https://shop.example";
  private static final String ALLOWED = "Access-Control-Allow-Origin";

  /** An answer, a refusal, a path that is not there, a wrong verb's path. */
  @ParameterizedTest
  @ValueSource(
      strings = {"/v1/formulas", "/v1/formulas?limit=0", "/v1/nothing", "/v1/formulas/none"})
  void an_allowed_origin_may_read_answers_and_refusals(String address) {
    try (var served = Served.with().origins("https://other.example", SHOP).open()) {
      served
          .ask()
          .header("Origin", SHOP)
          .get(address)
          .then()
          .header(ALLOWED, is(SHOP))
          .header("Vary", containsString("Origin"))
          .header("Access-Control-Expose-Headers", containsString("ETag"))
          .header("Access-Control-Expose-Headers", containsString("Location"));
    }
  }

  @Test
  void another_origin_may_not_and_caches_are_told_that_it_matters() {
    try (var served = Served.with().origins(SHOP).open()) {
      for (var origin :
          new String[] {"https://shop.example.evil.example", "http://shop.example", "null"}) {
        served
            .ask()
            .header("Origin", origin)
            .get("/v1/formulas")
            .then()
            .statusCode(200)
            .header(ALLOWED, nullValue())
            .header("Vary", containsString("Origin"));
      }
      served.ask().get("/v1/formulas").then().header("Vary", containsString("Origin"));
    }
  }

  @Test
  void none_is_allowed_unless_it_is_set() {
    try (var served = Served.usual()) {
      served.ask().header("Origin", SHOP).get("/v1/formulas").then().header(ALLOWED, nullValue());
    }
  }

  @Test
  void a_preflight_is_told_verbs_and_headers() {
    try (var served = Served.with().origins("*").open()) {
      served
          .ask()
          .header("Origin", SHOP)
          .header("Access-Control-Request-Method", "PUT")
          .header("Access-Control-Request-Headers", "content-type, if-match")
          .options("/v1/formulas/cream")
          .then()
          .statusCode(204)
          .header(ALLOWED, is(SHOP))
          .header("Access-Control-Allow-Methods", containsString("PUT"))
          .header("Access-Control-Allow-Headers", containsString("Content-Type"))
          .header("Access-Control-Allow-Headers", containsString("If-Match"))
          .header("Access-Control-Max-Age", is("600"));
    }
  }
}
