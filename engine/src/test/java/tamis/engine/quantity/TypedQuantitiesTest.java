package tamis.engine.quantity;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import java.util.function.DoubleFunction;
import java.util.function.Function;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientRef;

/** What holds for the text of every type of quantity, whatever the amount. */
class TypedQuantitiesTest {
  private static final int TRIES = 3_000;

  /** A type with its bounds. */
  private record Type(
      String name, DoubleFunction<?> of, Function<String, ?> parse, double low, double high) {
    @Override
    public String toString() {
      return name;
    }
  }

  /** A type that reads text. */
  private record Reader(String name, Function<String, ?> parse) {
    @Override
    public String toString() {
      return name;
    }
  }

  static List<Type> types() {
    return List.of(
        new Type("Mass", Mass::ofGrams, Mass::parse, 0, 1e9),
        new Type("Volume", Volume::ofMillilitres, Volume::parse, 0, 1e9),
        new Type("Density", Density::ofGramsPerMillilitre, Density::parse, 1e-6, 30),
        new Type("Temperature", Temperature::ofCelsius, Temperature::parse, -273.15, 2_000),
        new Type(
            "TemperatureDifference",
            TemperatureDifference::ofKelvins,
            TemperatureDifference::parse,
            -2_000,
            2_000),
        new Type("Energy", Energy::ofJoules, Energy::parse, 0, 1e15),
        new Type("Length", Length::ofMetres, Length::parse, -1e6, 1e6),
        new Type("Power", Power::ofWatts, Power::parse, 0, 1e9),
        new Type("Pressure", Pressure::ofPascals, Pressure::parse, 1, 1e8),
        new Type("TimeSpan", TimeSpan::ofSeconds, TimeSpan::parse, 0, 1e9),
        new Type("Fraction", Fraction::ofNumber, Fraction::parse, 0, 1));
  }

  static List<Reader> readers() {
    List<Reader> others =
        List.of(
            new Reader("Quantity", Quantity::parse),
            new Reader("Money", Money::parse),
            new Reader("UnitName", UnitName::parse),
            new Reader("IngredientRef", IngredientRef::parse));
    return Stream.concat(
            types().stream().map(type -> new Reader(type.name(), type.parse())), others.stream())
        .toList();
  }

  @ParameterizedTest
  @MethodSource("types")
  void parse_reads_exactly_what_to_string_writes(Type type) {
    RandomTexts random = new RandomTexts(RandomTexts.SEED);
    for (int i = 0; i < TRIES; i++) {
      double amount = random.number(type.low(), type.high());
      Object value = type.of().apply(amount);
      assertThat(type.parse().apply(value.toString()))
          .as("seed %s, %s", RandomTexts.SEED, value)
          .isEqualTo(value);
    }
  }

  @ParameterizedTest
  @MethodSource("types")
  void zero_has_no_sign_and_what_is_out_of_bounds_or_no_number_is_refused(Type type) {
    if (type.low() <= 0) {
      assertThat(type.of().apply(-0.0)).isEqualTo(type.of().apply(0.0));
    }
    for (double wrong :
        new double[] {
          Math.nextDown(type.low()),
          Math.nextUp(type.high()),
          Double.NaN,
          Double.POSITIVE_INFINITY,
          Double.NEGATIVE_INFINITY
        }) {
      assertThat(outcome(text -> type.of().apply(wrong), "")).as("%s", wrong).isEqualTo("refused");
    }
  }

  @ParameterizedTest
  @MethodSource("readers")
  void any_text_gives_a_value_or_a_refusal_and_the_value_reads_back(Reader reader) {
    RandomTexts random = new RandomTexts(RandomTexts.SEED);
    int read = 0;
    for (int i = 0; i < TRIES; i++) {
      String text = random.next();
      String outcome = outcome(reader.parse(), text);
      if (!outcome.equals("refused")) {
        read++;
        assertThat(outcome(reader.parse(), outcome))
            .as("seed %s, `%s`", RandomTexts.SEED, text)
            .isEqualTo(outcome);
      }
    }
    assertThat(read).as("the generator must hit the grammar, too").isBetween(1, TRIES - 1);
  }

  @Test
  void money_reads_exactly_what_it_writes() {
    RandomTexts random = new RandomTexts(RandomTexts.SEED);
    List<Currency> currencies =
        List.of(
            Currency.getInstance("EUR"), Currency.getInstance("JPY"), Currency.getInstance("KWD"));
    for (int i = 0; i < TRIES; i++) {
      BigDecimal amount =
          BigDecimal.valueOf(random.number(-1e9, 1e9)).movePointLeft(i % 5).multiply(two(i % 7));
      Money money = new Money(amount, currencies.get(i % 3));
      assertThat(Money.parse(money.toString())).isEqualTo(money);
    }
  }

  private static BigDecimal two(int power) {
    return BigDecimal.valueOf(2).pow(power);
  }

  /** The value's text, or "refused". Anything else that is thrown is a defect. */
  private static String outcome(Function<String, ?> parse, String text) {
    try {
      return parse.apply(text).toString();
    } catch (Refusal refusal) {
      assertThat(refusal.faults()).isNotEmpty();
      return "refused";
    } catch (RuntimeException | StackOverflowError defect) {
      throw new AssertionError("seed " + RandomTexts.SEED + ", `" + text + "`", defect);
    }
  }
}
