package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ScaleStepTest {
  /** Of decimal numbers as written: the definition. */
  private static double decimal(double grams, double step) {
    BigDecimal size = BigDecimal.valueOf(step);
    return BigDecimal.valueOf(grams)
        .divide(size, 0, RoundingMode.HALF_UP)
        .multiply(size)
        .doubleValue();
  }

  @ParameterizedTest
  @ValueSource(doubles = {0.01, 0.05, 0.1, 0.2, 0.25, 0.3, 0.5, 1, 1.5, 2, 2.5, 5, 10, 12.5, 1000})
  void a_rounded_mass_is_what_decimal_arithmetic_gives(double step) {
    var random = new Random(41);
    for (int i = 0; i < 20_000; i++) {
      double written = Math.rint(random.nextDouble() * 1e6) / 100; // halves of a step among them
      assertThat(ScaleStep.round(written, step)).isEqualTo(decimal(written, step));
      double worked = random.nextDouble() * Math.pow(10, random.nextInt(14) - 3);
      assertThat(ScaleStep.round(worked, step)).isEqualTo(decimal(worked, step));
      assertThat(ScaleStep.round(-worked, step) + 0.0).isEqualTo(decimal(-worked, step));
    }
  }

  @ParameterizedTest
  @CsvSource({
    "0, 0 g",
    "0.04, 0 g",
    "0.05, 0.1 g",
    "2.45, 2.5 g",
    "9.96, 10 g",
    "10.5, 11 g",
    "999.4, 999 g",
    "999.6, 1 kg",
    "1002.5, 1.005 kg",
    "12344, 12.34 kg",
    "1234567, 1234.57 kg"
  })
  void a_mass_is_shown_as_a_scale_shows_it(double grams, String shown) {
    assertThat(ScaleStep.shown(grams)).isEqualTo(shown);
  }

  @Test
  void what_is_shown_is_what_decimal_arithmetic_gives() {
    var random = new Random(43);
    for (int i = 0; i < 20_000; i++) {
      double grams = random.nextDouble() * Math.pow(10, random.nextInt(14) - 1);
      double rounded = ScaleStep.round(grams, ScaleStep.usual(grams));
      BigDecimal shown = BigDecimal.valueOf(rounded).movePointLeft(rounded < 1_000 ? 0 : 3);
      assertThat(ScaleStep.shown(grams))
          .isEqualTo(shown.stripTrailingZeros().toPlainString() + (rounded < 1_000 ? " g" : " kg"));
    }
  }

  @Test
  void a_volume_is_shown_with_the_same_steps() {
    assertThat(ScaleStep.shownVolume(1_252.4)).isEqualTo("1.25 l");
    assertThat(ScaleStep.shownVolume(7.26)).isEqualTo("7.3 ml");
  }
}
