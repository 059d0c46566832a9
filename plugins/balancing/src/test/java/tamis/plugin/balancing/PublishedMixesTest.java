package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.balancing.Mixes.balanced;
import static tamis.plugin.balancing.Mixes.bound;
import static tamis.plugin.balancing.Mixes.grams;
import static tamis.plugin.balancing.Mixes.map;
import static tamis.plugin.balancing.Mixes.own;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.spi.Answer;

/** Mixes that were worked out and published before: the square of two, algebra, a diet. */
class PublishedMixesTest {
  private static final List<String> NUTRIENTS =
      List.of(
          "calories",
          "proteins",
          "calcium",
          "iron-in",
          "vitamin-a",
          "thiamine",
          "riboflavin",
          "niacin",
          "ascorbic");
  private static final double[] DAILY = {3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75};

  @ParameterizedTest(name = "{0} of {1} % and {2} of {3} % to {4} %: {5} to {6}")
  @CsvFileSource(resources = "/pearson-square.csv", delimiter = '|', numLinesToSkip = 1)
  void two_components_come_out_as_by_the_square(
      String first,
      double firstFat,
      String second,
      double secondFat,
      double wanted,
      double firstParts,
      double secondParts,
      String source) {
    Balancing.Result result =
        balanced(
                "ingredients", List.of(own(first, "fat", firstFat), own(second, "fat", secondFat)),
                "mass", "10 kg",
                "bounds", List.of(bound("fat", "target", wanted)))
            .result();
    double share = firstParts / (firstParts + secondParts);
    assertThat(grams(result, first)).as(source).isEqualTo(10_000 * share, within(1e-3));
    assertThat(grams(result, second)).as(source).isEqualTo(10_000 * (1 - share), within(1e-3));
    assertThat(result.value()).isEqualTo(0, within(1e-9));
  }

  /** 8 = 0.35 c + 0.03 m and 10 = 0.05 c + 0.09 m + 0.96 p of 100 = c + m + p, solved by hand. */
  @Test
  void three_components_come_out_as_by_standard_algebra() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(
                    own("cream", "fat", 35.0, "msnf", 5.0),
                    own("milk", "fat", 3.0, "msnf", 9.0),
                    own("powder", "fat", 0.0, "msnf", 96.0)),
                "mass",
                "100 g",
                "bounds",
                List.of(
                    bound("fat", "low", 8.0, "high", 8.0),
                    bound("msnf", "low", 10.0, "high", 10.0)),
                "aim",
                "most",
                "of",
                "fat")
            .result();
    // powder = 100 - c - m; 0.05 c + 0.09 m + 0.96 (100 - c - m) = 10, so 0.91 c + 0.87 m = 86
    // with c = (8 - 0.03 m) / 0.35: 20.8 - 0.078 m + 0.87 m = 86, m = 65.2 / 0.792
    double milk = 65.2 / 0.792;
    double cream = (8 - 0.03 * milk) / 0.35;
    assertThat(grams(result, "milk")).isEqualTo(milk, within(1e-5));
    assertThat(grams(result, "cream")).isEqualTo(cream, within(1e-5));
    assertThat(grams(result, "powder")).isEqualTo(100 - milk - cream, within(1e-5));
  }

  /**
   * The cheapest diet of Stigler's 77 foods: Dantzig, The Diet Problem, Interfaces 20 (1990) 43,
   * and Garille and Gass, Operations Research 49 (2001) 1, tell wheat flour, liver, cabbage,
   * spinach and navy beans for 39.69 dollars a year (39.66 with the table as printed). A "100 g" is
   * a dollar's worth here.
   */
  @Test
  void the_cheapest_diet_is_the_published_one() throws Exception {
    Balancing.Result result = diet().result();
    assertThat(result.value() * 365).isEqualTo(39.66, within(0.005));
    assertThat(result.lines())
        .filteredOn(line -> line.grams() > 1e-6)
        .extracting(MixLine::ingredient)
        .containsExactlyInAnyOrder(
            "wheat flour enriched", "liver beef", "cabbage", "spinach", "navy beans dried");
    assertThat(grams(result, "wheat flour enriched") / 100 * 365).isEqualTo(10.774, within(0.001));
    assertThat(grams(result, "liver beef") / 100 * 365).isEqualTo(0.691, within(0.001));
    assertThat(grams(result, "cabbage") / 100 * 365).isEqualTo(4.093, within(0.001));
    assertThat(grams(result, "spinach") / 100 * 365).isEqualTo(1.828, within(0.001));
    assertThat(grams(result, "navy beans dried") / 100 * 365).isEqualTo(22.275, within(0.001));
  }

  /** Shadow prices: at the optimum they pay for the whole diet (strong duality). */
  @Test
  void shadow_prices_pay_for_the_whole_diet() throws Exception {
    Balancing.Result result = diet().result();
    assertThat(result.binding())
        .extracting(BindingBound::pointer)
        .containsExactlyInAnyOrder(
            "/bounds/0/low", "/bounds/2/low", "/bounds/4/low", "/bounds/6/low", "/bounds/8/low");
    double paid = 0;
    for (BindingBound one : result.binding()) {
      paid += one.shadowPrice() * one.limit();
      // a unit and what it gives agree with the slope at the bound, or the slope grows less
      assertThat(one.gain()).isLessThanOrEqualTo(one.shadowPrice() * one.relaxedBy() + 1e-9);
    }
    assertThat(paid).isEqualTo(result.value(), within(1e-6));
    assertThat(price(result, "calcium")).isEqualTo(0.031738, within(1e-6));
    assertThat(price(result, "riboflavin")).isEqualTo(0.016358, within(1e-6));
    assertThat(price(result, "calories")).isEqualTo(0.008765, within(1e-6));
    assertThat(price(result, "vitamin-a")).isEqualTo(0.000400, within(1e-6));
    assertThat(price(result, "ascorbic")).isEqualTo(0.000144, within(1e-6));
  }

  private static double price(Balancing.Result result, String property) {
    return result.binding().stream()
        .filter(one -> one.bound().startsWith(property + " "))
        .findFirst()
        .orElseThrow()
        .shadowPrice();
  }

  private Answer<Balancing.Result> diet() throws Exception {
    List<Object> foods = new ArrayList<>();
    Path table = Path.of(BalancingTest.class.getResource("/cost-of-subsistence.csv").toURI());
    List<String> lines = Files.readAllLines(table);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",");
      Map<String, Object> composition = new LinkedHashMap<>();
      for (int i = 0; i < NUTRIENTS.size(); i++) {
        composition.put(NUTRIENTS.get(i), Double.valueOf(cells[i + 1]));
      }
      foods.add(map("name", cells[0], "composition", composition, "pricePerKilogram", "10 USD"));
    }
    List<Object> bounds = new ArrayList<>();
    for (int i = 0; i < DAILY.length; i++) {
      bounds.add(bound(NUTRIENTS.get(i), "low", DAILY[i], "per", "whole"));
    }
    assertThat(foods).hasSize(77);
    return balanced("ingredients", foods, "bounds", bounds);
  }
}
