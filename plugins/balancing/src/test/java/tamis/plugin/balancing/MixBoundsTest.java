package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.balancing.Mixes.balanced;
import static tamis.plugin.balancing.Mixes.bound;
import static tamis.plugin.balancing.Mixes.figure;
import static tamis.plugin.balancing.Mixes.grams;
import static tamis.plugin.balancing.Mixes.priced;
import static tamis.plugin.balancing.Mixes.withBounds;

import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Refusal;

/** What bounds do to a mix, and what relaxing them would give. */
class MixBoundsTest {
  @Test
  void a_binding_bound_says_what_a_unit_would_give() {
    // cheap has 2 % fat at 1 EUR, dear 10 % at 5 EUR: each percent of fat costs 0.50 EUR a kilogram
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(priced("cheap", "1 EUR", "fat", 2.0), priced("dear", "5 EUR", "fat", 10.0)),
                "bounds",
                List.of(bound("fat", "low", 6.0)))
            .result();
    assertThat(result.value()).isEqualTo(3, within(1e-9));
    assertThat(result.cost()).hasToString("3.00 EUR");
    assertThat(result.binding())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.bound()).isEqualTo("fat at least 6 %");
              assertThat(one.gain()).isEqualTo(0.5, within(1e-9));
              assertThat(one.shadowPrice()).isEqualTo(0.5, within(1e-7));
              assertThat(one.words())
                  .isEqualTo("relaxing `fat at least 6 %` by 1 % would give 0.5 EUR/kg less");
            });
    assertThat(figure(result, "fat").atBound()).isEqualTo(Side.LOW);
  }

  @Test
  void bounds_of_an_ingredient_are_kept_and_told_in_its_own_unit() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(
                    withBounds(priced("cheap", "1 EUR", "fat", 2.0), "high", "300 g"),
                    withBounds(priced("dear", "5 EUR", "fat", 10.0), "lowPercent", 10.0)),
                "mass",
                "2 kg")
            .result();
    assertThat(grams(result, "cheap")).isEqualTo(300, within(1e-6));
    assertThat(result.lines().get(0).atBound()).isEqualTo(Side.HIGH);
    assertThat(result.lines().get(1).atBound()).isNull();
    // 20 g more of the cheap one in 2 kg: 1 % of 4 EUR a kilogram
    assertThat(result.binding())
        .extracting(BindingBound::bound, BindingBound::relaxedBy)
        .containsExactly(tuple("cheap at most 300 g", 20.0));
    assertThat(result.binding().get(0).gain()).isEqualTo(0.04, within(1e-9));
  }

  @Test
  void nearest_takes_the_weight_into_account_and_then_the_price() {
    List<Object> items =
        List.of(
            priced("a", "4 EUR", "fat", 10.0, "protein", 0.0),
            priced("b", "3 EUR", "fat", 0.0, "protein", 10.0),
            priced("c", "1 EUR", "fat", 0.0, "protein", 10.0));
    List<Object> bounds =
        List.of(bound("fat", "target", 8.0, "weight", 3.0), bound("protein", "target", 8.0));
    Balancing.Result result = balanced("ingredients", items, "bounds", bounds).result();
    // fat and protein come to 10 together: fat is met, protein is 6 short
    assertThat(figure(result, "fat").deviation()).isEqualTo(0, within(1e-6));
    assertThat(figure(result, "protein").deviation()).isEqualTo(-6, within(1e-6));
    assertThat(result.value()).isEqualTo(6, within(1e-6));
    assertThat(grams(result, "b")).as("c is as good and cheaper").isEqualTo(0, within(1e-2));
  }

  /** No mix on a fine grid that keeps the bounds is cheaper. */
  @Test
  void no_mix_on_a_grid_is_cheaper() {
    Random random = new Random(7);
    int solved = 0;
    for (int round = 0; round < 100; round++) {
      double[] fat = random.doubles(3, 0, 40).toArray();
      double[] cost = random.doubles(3, 1, 9).map(c -> Math.rint(c * 100) / 100).toArray();
      double low = random.nextInt(25);
      List<Object> items = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        items.add(priced("i" + i, cost[i] + " EUR", "fat", fat[i]));
      }
      Object[] input = {
        "ingredients", items, "bounds", List.of(bound("fat", "low", low, "high", low + 5))
      };
      if (catchThrowableOfType(Refusal.class, () -> balanced(input)) != null) {
        continue;
      }
      solved++;
      double best = balanced(input).result().value();
      for (int a = 0; a <= 100; a++) {
        for (int b = 0; a + b <= 100; b++) {
          double f = (a * fat[0] + b * fat[1] + (100 - a - b) * fat[2]) / 100;
          double c = (a * cost[0] + b * cost[1] + (100 - a - b) * cost[2]) / 100;
          if (f >= low && f <= low + 5) {
            assertThat(best).isLessThanOrEqualTo(c + 1e-6);
          }
        }
      }
    }
    assertThat(solved).isGreaterThan(30);
  }

  @Test
  void a_thousand_ingredients_with_bounds_of_their_own_are_balanced() {
    Random random = new Random(3);
    List<Object> items = new ArrayList<>();
    for (int i = 0; i < 1_000; i++) {
      items.add(
          withBounds(
              priced(
                  "i" + i,
                  Math.rint(random.nextDouble() * 900 + 100) / 100 + " EUR",
                  "fat",
                  random.nextDouble() * 40,
                  "water",
                  random.nextDouble() * 60),
              "high",
              "20 g",
              "low",
              i % 50 == 0 ? "1 g" : "0 g"));
    }
    assertThatCode(
            () -> {
              Balancing.Result result =
                  balanced(
                          "ingredients",
                          items,
                          "mass",
                          "1 kg",
                          "bounds",
                          List.of(
                              bound("fat", "low", 10.0, "high", 12.0),
                              bound("water", "high", 30.0)))
                      .result();
              assertThat(result.grams()).isEqualTo(1_000, within(1e-3));
              assertThat(result.lines()).allMatch(line -> line.grams() <= 20.001);
              assertThat(figure(result, "fat").value()).isBetween(9.99999, 12.00001);
            })
        .doesNotThrowAnyException();
  }
}
