package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.balancing.Mixes.balanced;
import static tamis.plugin.balancing.Mixes.bound;
import static tamis.plugin.balancing.Mixes.figure;
import static tamis.plugin.balancing.Mixes.grams;
import static tamis.plugin.balancing.Mixes.map;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class BalancingTest extends CalculationContract<Balancing.Input, Balancing.Result> {
  @Override
  protected Calculation<Balancing.Input, Balancing.Result> calculation() {
    return new Balancing();
  }

  @Override
  protected Plugin plugin() {
    return new BalancingPlugin();
  }

  @Test
  void a_mix_of_the_tables_is_balanced_and_comes_to_what_it_says() {
    Answer<Balancing.Result> answer = answer(new Balancing().examples().get(0));
    Balancing.Result result = answer.result();
    assertThat(result.grams()).isEqualTo(5_000, within(1e-3));
    double fat = 0;
    double[] per100 = {3.25, 36.08, 0.77, 0.0, 0.0};
    for (int i = 0; i < per100.length; i++) {
      fat += result.lines().get(i).grams() * per100[i] / 5_000;
    }
    assertThat(figure(result, "fat").value()).isEqualTo(fat, within(1e-6)).isBetween(7.999, 10.001);
    assertThat(figure(result, "sweetness").valueLow())
        .isLessThan(figure(result, "sweetness").value());
    assertThat(answer.remarks())
        .extracting(Remark::code)
        .contains("sweetness-differs", "mix-on-paper");
    assertThat(answer.sources()).isNotEmpty();
  }

  @Test
  void milk_solids_and_sweetness_follow_from_the_tables() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(map("ingredient", "milk-powder-skim")),
                "aim",
                "most",
                "of",
                "milk-solids-not-fat")
            .result();
    assertThat(result.value()).as("100 - 3.16 - 0.77").isEqualTo(96.07, within(1e-6));
    assertThat(figure(result, "sweetness").value())
        .as("51.98 % lactose at 16")
        .isEqualTo(51.98 * 0.16, within(1e-6));
    assertThat(figure(result, "solids").value()).isEqualTo(96.84, within(1e-6));
    Balancing.Result sugar =
        balanced(
                "ingredients",
                List.of(map("ingredient", "dextrose")),
                "aim",
                "most",
                "of",
                "sweetness")
            .result();
    assertThat(sugar.value()).as("91 % glucose at 74").isEqualTo(91 * 0.74, within(1e-6));
  }

  @Test
  void prices_of_the_request_are_used_by_their_packs() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(map("ingredient", "milk-whole"), map("ingredient", "cream-heavy")),
                "mass",
                "1 kg",
                "bounds",
                List.of(bound("fat", "low", 10.0, "high", 10.0)),
                "prices",
                List.of(
                    map("ingredient", "milk-whole", "pack", "10 kg", "price", "9 EUR"),
                    map("ingredient", "cream-heavy", "pack", "2 kg", "price", "10 EUR")))
            .result();
    double cream = (10 - 3.25) / (36.08 - 3.25);
    assertThat(result.value()).isEqualTo(cream * 5 + (1 - cream) * 0.9, within(1e-6));
  }

  @Test
  void the_order_of_ingredients_does_not_matter() {
    Balancing.Input input = new Balancing().examples().get(0);
    List<MixItem> turned = new ArrayList<>(input.ingredients());
    java.util.Collections.reverse(turned);
    Balancing.Result one = answer(input).result();
    Balancing.Result two =
        answer(
                new Balancing.Input(
                    turned, input.mass(), input.bounds(), null, null, null, List.of()))
            .result();
    assertThat(two.value()).isEqualTo(one.value(), within(1e-7));
    one.lines()
        .forEach(
            line ->
                assertThat(grams(two, line.ingredient())).isEqualTo(line.grams(), within(1e-3)));
  }
}
