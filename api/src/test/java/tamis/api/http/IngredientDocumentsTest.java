package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.is;
import static org.hamcrest.Matchers.not;

import java.util.ArrayList;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import tamis.engine.ingredient.ReferenceIngredients;

class IngredientDocumentsTest {
  private static final String PRALINE =
      "{\"id\":\"house-praline\",\"names\":{\"en\":[\"house praline\"]},"
          + "\"densities\":[{\"state\":\"as-measured\",\"low\":\"1.1 g/ml\",\"typical\":\"1.2 g/ml\",\"high\":\"1.3 g/ml\",\"source\":\"own cups\"}]}";
  private static final String EGG =
      "{\"id\":\"egg\",\"names\":{\"en\":[\"egg\"]},\"pieceMass\":\"63 g\"}";

  private Served served;

  @BeforeEach
  void open() {
    served = Served.usual();
  }

  @AfterEach
  void close() {
    served.close();
  }

  private double gramsOfThreeEggs() {
    var text =
        served
            .ask()
            .get("/v1/calculations/conversion?quantity=3+each&ingredient=egg&unit=g&format=text")
            .body()
            .asString();
    return Double.parseDouble(text);
  }

  @Test
  void the_built_in_ones_are_listed_once_with_the_shops_own() {
    served.json(PRALINE).post("/v1/ingredients").then().statusCode(201);
    served.json(EGG).header("If-Match", "\"0\"").put("/v1/ingredients/egg").then().statusCode(200);
    var seen = new ArrayList<String>();
    for (String next = ""; next != null; ) {
      var page = served.ask().get("/v1/ingredients?limit=100" + next).jsonPath();
      seen.addAll(page.getList("items.id"));
      next = page.getString("next") == null ? null : "&cursor=" + page.getString("next");
    }
    assertThat(seen)
        .hasSize(ReferenceIngredients.standard().all().size() + 1)
        .doesNotHaveDuplicates()
        .isSorted()
        .contains("egg", "house-praline");
  }

  @Test
  void the_word_search_finds_names_of_both() {
    served.json(PRALINE).post("/v1/ingredients");
    served.ask().get("/v1/ingredients?q=prali").then().body("items.id", hasItem("house-praline"));
    served
        .ask()
        .get("/v1/ingredients?q=butter+unsalt")
        .then()
        .body("items.id", hasItem("butter-unsalted"))
        .body("items.id", not(hasItem("house-praline")));
  }

  @Test
  void a_built_in_one_is_revision_0_and_is_replaced_openly() {
    double before = gramsOfThreeEggs();
    served.ask().get("/v1/ingredients/egg").then().statusCode(200).header("ETag", "\"0\"");
    served.json(EGG).post("/v1/ingredients").then().statusCode(409);
    served.json(EGG).put("/v1/ingredients/egg").then().statusCode(428);
    served.json(EGG).header("If-None-Match", "*").put("/v1/ingredients/egg").then().statusCode(412);
    served
        .json(EGG)
        .header("If-Match", "\"0\"")
        .put("/v1/ingredients/egg")
        .then()
        .statusCode(200)
        .header("ETag", "\"1\"");
    assertThat(before).isEqualTo(150);
    assertThat(gramsOfThreeEggs()).isEqualTo(189);
  }

  @Test
  void a_built_in_one_comes_back_when_the_shops_own_is_deleted() {
    served.json(EGG).header("If-Match", "\"0\"").put("/v1/ingredients/egg");
    served.ask().header("If-Match", "\"1\"").delete("/v1/ingredients/egg").then().statusCode(204);
    served.ask().get("/v1/ingredients/egg").then().statusCode(200).header("ETag", "\"0\"");
    assertThat(gramsOfThreeEggs()).isEqualTo(150);
    served
        .ask()
        .header("If-Match", "\"0\"")
        .delete("/v1/ingredients/egg")
        .then()
        .statusCode(409)
        .body("detail", containsString("built in"));
  }

  @Test
  void what_is_read_of_a_built_in_one_is_what_put_takes() {
    var egg = served.ask().get("/v1/ingredients/egg").body().asString();
    served.json(egg).header("If-Match", "\"0\"").put("/v1/ingredients/egg").then().statusCode(200);
    assertThat(served.ask().get("/v1/ingredients/egg").body().asString()).isEqualTo(egg);
  }

  @Test
  void a_shops_own_is_named_in_calculations_at_once() {
    var address =
        "/v1/calculations/conversion?quantity=10+ml&ingredient=house+praline&unit=g&format=text";
    served.ask().get(address).then().statusCode(422);
    served.json(PRALINE).post("/v1/ingredients").then().statusCode(201);
    served.ask().get(address).then().statusCode(200).body(is("12"));
  }
}
