package tamis.plugin.trials;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Pressure;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

/**
 * Calculations of the names that are asked through the kitchen, simple enough to work out by hand:
 * windows fall by 1 °C for each 300 m, a batch costs 2 EUR for each time the formula is made.
 */
final class StandIns implements Plugin {
  private final List<Calculation<?, ?>> calculations;

  StandIns(Calculation<?, ?>... calculations) {
    this.calculations = List.of(calculations);
  }

  @Override
  public String name() {
    return "stand-ins";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return calculations;
  }

  /** Looks a window up and moves it. */
  static final class Check extends Named<Check.Input, Check.Result> {
    public record Input(
        @Described("f") FormulaRef formula,
        @Described("s") String stage,
        @Described("r") List<Read> readings,
        @Described("a") @Nullable Length altitude,
        @Described("p") @Nullable Pressure pressure,
        @Described("b") @Nullable Temperature boilingWater) {}

    public record Read(@Described("v") String value) {}

    public record Window(
        @Described("l") @Nullable Double low,
        @Described("h") @Nullable Double high,
        @Described("l") @Nullable Double writtenLow,
        @Described("h") @Nullable Double writtenHigh,
        @Described("c") boolean corrected) {}

    public record Result(@Described("u") String unit, @Described("w") Window window) {}

    Check() {
      super("stage-check", Input.class, Result.class);
    }

    @Override
    public Answer<Result> calculate(Input input, Kitchen kitchen) {
      if (input.pressure() != null && input.altitude() != null) {
        throw Refusal.of(FaultCode.INCONSISTENT, "/pressure", "altitude and pressure are given");
      }
      Formula formula = kitchen.formula(input.formula());
      Stage stage =
          formula.stages().stream()
              .filter(s -> s.id().equals(input.stage()))
              .findFirst()
              .orElseThrow();
      StageTarget target = stage.target();
      if (target.low() == null && target.high() == null) {
        throw Refusal.of(FaultCode.MISSING, "/stage", "no window of this kind");
      }
      double down = input.altitude() == null ? 0 : input.altitude().metres() / 300;
      boolean celsius =
          target.measure() == null || target.measure() == StageTarget.Measure.TEMPERATURE;
      @Nullable Double low = number(target.low());
      @Nullable Double high = number(target.high());
      Notes notes = new Notes();
      notes.caution("hot", "/readings", "hot sugar burns");
      return Answer.of(
          new Result(
              celsius ? "°C" : "",
              new Window(
                  low == null ? null : low - down,
                  high == null ? null : high - down,
                  low,
                  high,
                  down != 0)),
          notes);
    }

    private static @Nullable Double number(@Nullable String text) {
      return text == null ? null : Double.valueOf(text.replaceAll("[^0-9.]", ""));
    }
  }

  /** 2 EUR a factor, or a refusal for formulas of this id. */
  static final class Cost extends Named<Cost.Input, Cost.Result> {
    private final String unpriced;

    public record Input(@Described("f") FormulaRef formula, @Described("t") @Nullable To to) {}

    public record Result(@Described("t") Money total) {}

    Cost(String unpriced) {
      super("cost", Input.class, Result.class);
      this.unpriced = unpriced;
    }

    @Override
    public Answer<Result> calculate(Input input, Kitchen kitchen) {
      if (unpriced.equals(input.formula().id())) {
        throw Refusal.of(FaultCode.MISSING, "/prices", "no price of butter-unsalted");
      }
      double factor = kitchen.batch(input.formula(), input.to()).factor();
      BigDecimal amount = BigDecimal.valueOf(2 * factor);
      return Answer.of(new Result(new Money(amount, Currency.getInstance("EUR"))));
    }
  }

  /** Says what it was asked. */
  static final class Allergens extends Named<Allergens.Input, Allergens.Result> {
    public record Input(
        @Described("f") FormulaRef formula,
        @Described("t") @Nullable To to,
        @Described("r") String regime) {}

    public record Result(
        @Described("s") String statement, @Described("m") String mayContainStatement) {}

    Allergens() {
      super("allergens", Input.class, Result.class);
    }

    @Override
    public Answer<Result> calculate(Input input, Kitchen kitchen) {
      String name = kitchen.formula(input.formula()).name();
      Notes notes = new Notes();
      notes.caution("cross-contact-unknown", "", "cross-contact is not known");
      return Answer.of(
          new Result("Contains: milk (" + name + ", " + input.regime() + ").", "May contain: egg."),
          notes);
    }
  }

  private abstract static class Named<I extends Record, R extends Record>
      implements Calculation<I, R> {
    private final String name;
    private final Class<I> input;
    private final Class<R> result;

    Named(String name, Class<I> input, Class<R> result) {
      this.name = name;
      this.input = input;
      this.result = result;
    }

    @Override
    public String name() {
      return name;
    }

    @Override
    public String title() {
      return "A stand-in";
    }

    @Override
    public Class<I> input() {
      return input;
    }

    @Override
    public Class<R> result() {
      return result;
    }

    @Override
    public List<I> examples() {
      return List.of();
    }
  }
}
