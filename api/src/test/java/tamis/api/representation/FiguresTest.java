package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.FaultCode;

class FiguresTest {
  @ParameterizedTest
  @CsvSource({
    "3, 3",
    "-3, -3",
    "113.4, 113.4",
    "0.1, 0.1",
    "-0.0, 0",
    "1e5, 100000",
    "1e-5, 0.00001",
    "1.5e-7, 0.00000015",
    "1e-9, 1e-9",
    "1.25e-9, 1.25e-9",
    "9007199254740993, 9007199254740992",
    "1e20, 100000000000000000000",
    "1e21, 1e21",
    "1.5e300, 1.5e300",
    "0.30000000000000004, " + "0.30000000000000004",
    "2e-3, 0.002",
    "1234567.891, 1234567.891",
    "4.9e-324, 4.9e-324"
  })
  void doubles_are_as_short_as_exactness_allows(double value, String text) {
    assertThat(Figures.text(value)).isEqualTo(text);
  }

  @Test
  void every_double_is_read_back_as_itself_and_is_a_number_of_json() {
    SplittableRandom random = new SplittableRandom(7);
    for (int i = 0; i < 100_000; i++) {
      double value = Double.longBitsToDouble(random.nextLong());
      if (Double.isFinite(value)) {
        String text = Figures.text(value);
        assertThat(Double.parseDouble(text)).as(text).isEqualTo(value);
        assertThat(Figures.isNumber(text)).as(text).isTrue();
      }
    }
  }

  @ParameterizedTest
  @CsvSource({
    "1.1520000000000001, 1.152",
    "0.30000000000000004, 0.3",
    "176.66666666666674, 176.666666666667",
    "-668.9199666886827, -668.919966688683",
    "1959.2160000000001, 1959.216",
    "0.000012345678901234567, 0.0000123456789012346",
    "1234567890123.4567, 1234567890123.46",
    "3, 3",
    "0, 0",
    "1e300, 1e300",
    "1234567890123456.5, 1234567890123456.5",
    "99999999.9999999, 99999999.9999999",
    "0.99999999999999989, 1",
    "1.2345678901234567e-7, 0.000000123456789012346",
    "9.9999999999999999e-8, 0.0000001",
    "3.0000000000000004e-8, 3e-8",
    "1.2345678901234567e-30, 1.2345678901234567e-30"
  })
  void figures_that_were_worked_out_are_shown_to_fifteen_digits(double value, String text) {
    assertThat(Figures.shown(value)).isEqualTo(text);
  }

  @Test
  void what_is_shown_has_at_most_fifteen_digits_and_is_as_near_as_they_are() {
    SplittableRandom random = new SplittableRandom(11);
    for (int i = 0; i < 100_000; i++) {
      double value = (0.01 + random.nextDouble()) * Math.pow(10, random.nextInt(-4, 12));
      String text = Figures.shown(value);
      assertThat(new BigDecimal(text).precision()).as(text).isLessThanOrEqualTo(15);
      assertThat(Math.abs(Double.parseDouble(text) - value)).isLessThanOrEqualTo(value * 6e-15);
    }
  }

  /** By doubles and the fewest digits that are read back: slower, and nothing in it is our own. */
  private static String theLongWay(double value) {
    if (value == Math.rint(value)) {
      return Figures.text(value);
    }
    BigDecimal exact = new BigDecimal(Math.abs(value));
    int places = 15 - (exact.precision() - exact.scale());
    if (places < 0 || places > 22) {
      return Figures.text(value);
    }
    double power = Double.parseDouble("1e" + places);
    return Figures.text(Math.rint(value * power) / power);
  }

  @Test
  void the_short_way_writes_what_the_long_way_does() {
    SplittableRandom random = new SplittableRandom(15);
    for (int i = 0; i < 20_000; i++) {
      double of = random.nextDouble() * Math.pow(10, random.nextInt(-12, 22));
      double decimal = Double.parseDouble(random.nextLong(1_000_000_000) + "e-" + i % 12);
      double power = Double.parseDouble("1e" + random.nextInt(-24, 24));
      double[] values = {
        of,
        -of,
        Math.rint(of) + 0.5, // halves
        Math.rint(of),
        decimal,
        decimal / 3,
        Math.nextUp(decimal),
        power,
        Math.nextUp(power),
        Math.nextDown(power),
        Double.longBitsToDouble(random.nextLong()), // any, those that are no number too
        Double.MIN_VALUE * random.nextInt(1, 1_000_000) // subnormal
      };
      for (double value : values) {
        if (Double.isFinite(value)) {
          assertThat(Figures.shown(value)).as("" + value).isEqualTo(theLongWay(value));
        }
      }
    }
  }

  @ParameterizedTest
  @CsvSource({"4.40, 4.4", "100, 100", "0.000, 0", "1E+3, 1000", "1E+50, 1e50", "1E-50, 1e-50"})
  void decimals_lose_their_trailing_zeros(BigDecimal value, String text) {
    assertThat(Figures.text(value)).isEqualTo(text);
  }

  @ParameterizedTest
  @ValueSource(doubles = {Double.NaN, Double.POSITIVE_INFINITY, Double.NEGATIVE_INFINITY})
  void what_is_no_finite_number_is_a_failure(double value) {
    assertThat(Refused.only(() -> Figures.text(value)).code()).isEqualTo(FaultCode.FAILED);
  }
}
