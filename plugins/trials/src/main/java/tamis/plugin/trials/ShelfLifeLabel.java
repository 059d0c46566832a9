package tamis.plugin.trials;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.ShelfLife;
import tamis.engine.formula.To;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Temperature;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * The label of what is stored: name, made, use by, allergens, quantity, one for each temperature
 * that the formula tells a keeping time for. Use by is made plus that time. The keeping time is the
 * formula's own word and not tested here.
 */
public final class ShelfLifeLabel
    implements Calculation<ShelfLifeLabel.Input, ShelfLifeLabel.Result> {

  /** What was made, and when. */
  public record Input(
      @Described(
              value = "Id, id@revision, or the whole document",
              example = "coffee-meringue-cream")
          FormulaRef formula,
      @Described(value = "Local day, or day and time, ISO 8601", example = "2026-04-11T08:10")
          MadeAt made,
      @Described(value = "What is in the box; taken from the batch if left out", example = "850 g")
          @Nullable Quantity quantity,
      @Described("How much was made; as written if left out") @Nullable To to,
      @Described(
              value = "At which temperature it is kept; all that are told if left out",
              example = "4 °C")
          @Nullable Temperature at,
      @Described(
              value = "Whose list of allergens is meant, as `allergens` takes it; EU if left out",
              example = "EU",
              most = 10)
          @Nullable String regime) {
    public Input {
      if (quantity != null && !quantity.isMeasured()) {
        throw new Refusal(
            new Fault(
                FaultCode.NO_SIZE,
                "/quantity",
                quantity.text(),
                "a mass, a volume or a count",
                "`" + quantity.text() + "` is no amount that a label can tell"));
      }
    }
  }

  /** The labels. */
  public record Result(
      @Described("Name of what was made") String name,
      @Described("When it was made") String made,
      @Described("What is in it; left out if it is not known") @Nullable String quantity,
      @Described("Sentence on allergens; left out if it is not known") @Nullable String allergens,
      @Described("Sentence on cross-contact; left out if it is not known")
          @Nullable String mayContain,
      @Described(value = "One label for each way to keep it", table = true) List<Label> labels) {}

  /** One label. */
  public record Label(
      @Described(value = "Kept at", unit = "°C") double celsius,
      @Described(value = "Keeps", unit = "h") double hours,
      @Described(value = "Use by, local time", example = "2026-04-16T08:10") LocalDateTime useBy,
      @Described("The whole text, a line each") String text) {}

  @Override
  public String name() {
    return "shelf-life-label";
  }

  @Override
  public String title() {
    return "The label of what is stored: made, use by, allergens, quantity";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return List.of(
        new Input(FormulaRef.of(syrup()), MadeAt.parse("2026-04-11T08:10"), null, null, null, null),
        new Input(
            FormulaRef.of(syrup()),
            MadeAt.parse("2026-04-11"),
            Quantity.parse("250 ml"),
            null,
            Temperature.ofCelsius(4),
            "US"));
  }

  private static Formula syrup() {
    return new Formula(
        "syrup-example",
        "Plain syrup",
        Measures.METRIC,
        List.of(Line.of("sugar-granulated", "200 g"), Line.of("water", "200 g")),
        null,
        List.of(),
        List.of(
            new ShelfLife(Temperature.ofCelsius(4), TimeSpan.parse("14 d")),
            new ShelfLife(Temperature.ofCelsius(20), TimeSpan.parse("2 d"))),
        List.of(),
        List.of(),
        null,
        null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Labels(input, kitchen).answer();
  }
}
