package example.eggwash;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class EggWashTest extends CalculationContract<EggWash.Input, EggWash.Result> {
  @Override
  protected Calculation<EggWash.Input, EggWash.Result> calculation() {
    return new EggWash();
  }

  @Override
  protected Plugin plugin() {
    return new EggWashPlugin();
  }

  @ParameterizedTest(name = "{1} × {0} take {2} g ({4})")
  @CsvFileSource(resources = "/egg-wash.csv", numLinesToSkip = 1)
  void the_wash_matches_the_worked_examples(
      String piece, int count, double grams, double eggs, String source) {
    EggWash.Result result =
        calculation().calculate(new EggWash.Input(piece, count, null), kitchen()).result();
    assertThat(result.grams()).isCloseTo(grams, within(1e-9));
    assertThat(result.eggs()).isCloseTo(eggs, within(1e-9));
  }

  @Test
  void a_piece_that_the_table_does_not_know_is_refused() {
    EggWash.Input input = new EggWash.Input("bagel", 12, null);
    assertThatThrownBy(() -> calculation().calculate(input, kitchen()))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("known are roll, croissant, plait, tart-shell");
  }
}
