package tamis.plugin.scaling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.scaling.Scaled.formula;
import static tamis.plugin.scaling.Scaled.map;
import static tamis.plugin.scaling.Scaled.scaled;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.spi.Answer;

/** Batches that break whole eggs. */
class WholeEggsTest {
  @Test
  void factors_for_whole_eggs_are_told() {
    Scaling.Result result =
        scaled(formula("cake", "egg 3 each; water 1 g"), "to", map("factor", 1.5)).result();
    assertThat(result.wholeEggs()).hasSize(1);
    WholeEggs eggs = result.wholeEggs().get(0);
    assertThat(eggs.ingredient()).isEqualTo("egg");
    assertThat(eggs.count()).isEqualTo(4.5, within(1e-9));
    assertThat(List.of(eggs.down(), eggs.up())).containsExactly(4.0, 5.0);
    assertThat(eggs.downFactor()).isEqualTo(4 / 3.0, within(1e-9));
    assertThat(eggs.upFactor()).isEqualTo(5 / 3.0, within(1e-9));
    WholeEggs few = scaled(formula("cake", "egg 20 g; water 1 g")).result().wholeEggs().get(0);
    assertThat(few.downFactor()).isNull();
    assertThat(few.up()).isEqualTo(1);
    WholeEggs whole = scaled("egg 3 each; water 1 g").result().wholeEggs().get(0);
    assertThat(List.of(whole.down(), whole.up())).containsExactly(3.0, 3.0);
  }

  @ParameterizedTest(name = "at {0} times {1} eggs are used")
  @CsvSource({"1.4, 4", "1.5, 5", "1.6, 5", "0.1, 1", "1, 3"})
  void the_batch_is_made_for_whole_eggs_if_wanted(double factor, double eggs) {
    Answer<Scaling.Result> answer =
        scaled(
            formula("cake", "egg 3 each; water 30 g"),
            "to",
            map("factor", factor),
            "rounding",
            map("wholeEggs", true));
    assertThat(answer.result().wholeEggs().get(0).count()).isEqualTo(eggs, within(1e-9));
    assertThat(answer.result().factor()).isEqualTo(eggs / 3, within(1e-9));
    assertThat(answer.result().bill().get("water").grams()).isEqualTo(10 * eggs, within(1e-9));
    assertThat(answer.result().portions()).isEqualTo(10 * eggs / 3, within(1e-9));
    assertThat(answer.remarks().stream().anyMatch(r -> r.code().equals("whole-eggs")))
        .isEqualTo(factor != 1);
  }

  @Test
  void what_is_on_hand_is_never_overdrawn_for_a_whole_egg() {
    Map<String, Object> cake = formula("cake", "egg 3 each; water 30 g");
    Object stock = map("stock", List.of(map("ingredient", "water", "quantity", "49 g")));
    Scaling.Result result = scaled(cake, "to", stock, "rounding", map("wholeEggs", true)).result();
    assertThat(result.wholeEggs().get(0).count()).as("4.9 as asked").isEqualTo(4, within(1e-9));
    assertThat(result.limitedBy()).isEqualTo("water");
    Object little = map("stock", List.of(map("ingredient", "water", "quantity", "4 g")));
    Answer<Scaling.Result> few = scaled(cake, "to", little, "rounding", map("wholeEggs", true));
    assertThat(few.result().factor()).isEqualTo(4 / 30.0, within(1e-9));
    assertThat(few.remarks()).anyMatch(r -> r.message().contains("one whole egg"));
  }

  @Test
  void of_several_kinds_of_egg_the_first_is_made_whole() {
    Map<String, Object> cake = formula("cake", "egg 3 each; egg-yolk 2 each");
    Answer<Scaling.Result> answer =
        scaled(cake, "to", map("factor", 1.1), "rounding", map("wholeEggs", true));
    assertThat(answer.result().factor()).as("3.3 eggs as asked").isEqualTo(1, within(1e-9));
    assertThat(answer.result().wholeEggs())
        .extracting(WholeEggs::ingredient)
        .containsExactly("egg", "egg-yolk");
    assertThat(answer.remarks()).anyMatch(r -> r.message().contains("only `egg`"));
  }

  @Test
  void a_formula_without_eggs_stays_as_it_is() {
    Map<String, Object> cake = formula("cake", "water 30 g");
    Answer<Scaling.Result> answer =
        scaled(cake, "to", map("factor", 1.1), "rounding", map("wholeEggs", true));
    assertThat(answer.result().factor()).isEqualTo(1.1);
    assertThat(answer.remarks()).isEmpty();
  }
}
