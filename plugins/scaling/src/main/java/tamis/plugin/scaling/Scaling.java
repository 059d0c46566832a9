package tamis.plugin.scaling;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.KitchenMeasure;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.ScaleStep;
import tamis.engine.quantity.Shown;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * A formula made at a size: every line of every part in grams, and what a scale can show of them.
 * Sub-formulas are asked for by their finished mass, so their own losses are made up for.
 */
public final class Scaling implements Calculation<Scaling.Input, Scaling.Result> {
  static final String AS_NEEDED = "as needed";

  /** What is scaled, and how much of it is wanted. */
  public record Input(
      @Described(
              value = "Id, id@revision, or the whole document",
              example = "coffee-meringue-cream")
          FormulaRef formula,
      @Described("How much to make; as written if left out") @Nullable To to,
      @Described("How figures are rounded") @Nullable Rounding rounding,
      @Described(
              value =
                  "Height of the bakery above the sea; changes a shortened cake by the published table",
              example = "1500 m",
              atLeast = "-500 m",
              atMost = "6000 m")
          @Nullable Length altitude,
      @Described("In whose measures `display` is written") @Nullable Shown units) {}

  /** The batch in grams. */
  public record Result(
      @Described(
              value =
                  "Times the formula as written; of a formula wholly in percent, times 100 g of flour",
              headline = true)
          double factor,
      @Described(value = "Mass at mixing that stays in the batch", unit = "g") double grams,
      @Described(value = "All that is weighed", unit = "g") double weighedGrams,
      @Described(value = "Raw mass after make-up", unit = "g") double madeUpGrams,
      @Described(value = "Finished mass, after all losses", unit = "g") double yieldGrams,
      @Described("Portions, if the formula says how many it gives") @Nullable Double portions,
      @Described("What on hand is used up first") @Nullable String limitedBy,
      @Described(value = "Every ingredient line of every part", table = true)
          List<ScaledLine> lines,
      @Described("Each ingredient over all parts, by id") Map<String, BillEntry> bill,
      @Described("The formula and its parts") ScaledPart parts,
      @Described("What is left over of eggs and fruit used in part") List<LeftOver> byProducts,
      @Described("Factors at which whole eggs are used") List<WholeEggs> wholeEggs) {}

  /** One ingredient over all parts. */
  public record BillEntry(
      @Described(value = "To weigh", unit = "g") double grams,
      @Described(value = "Lightest", unit = "g") double low,
      @Described(value = "Heaviest", unit = "g") double high,
      @Described(value = "To the step of a scale", unit = "g") double roundedGrams,
      @Described("To read off at the bench") String display) {}

  /** What is left over. */
  public record LeftOver(
      @Described("Id of the ingredient") String ingredient,
      @Described(value = "How much is left", unit = "g") double grams,
      @Described("What was opened for it") String from) {}

  @Override
  public String name() {
    return "scaling";
  }

  @Override
  public String title() {
    return "A formula made at a size, every part in grams";
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
    return ScalingExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Rounding rounding = input.rounding() == null ? Rounding.usual() : input.rounding();
    @Nullable AltitudeChange altitude = AltitudeChange.at(input.altitude(), notes);
    Batch batch = new Sized(input, altitude, kitchen, notes).batch();
    batch.sources().forEach(notes::cite);
    Lines lines = new Lines(input.formula(), rounding, input.units(), altitude, notes);
    List<ScaledLine> scaled = lines.of(batch);
    return Answer.of(result(batch, scaled, rounding, input.units()), notes);
  }

  private static Result result(
      Batch batch, List<ScaledLine> lines, Rounding rounding, @Nullable Shown units) {
    Batch.Part root = batch.root();
    @Nullable Double portions = root.formula().yieldOrNothing().portions();
    return new Result(
        batch.factor(),
        root.mass().typical(),
        root.weighed().typical(),
        root.madeUp().typical(),
        root.finished().typical(),
        portions == null ? null : portions * batch.factor(),
        batch.limitedBy(),
        lines,
        bill(batch, rounding, units),
        ScaledPart.of(root),
        batch.byProducts().stream()
            .map(b -> new LeftOver(b.ingredient(), b.grams(), b.from()))
            .toList(),
        WholeEggs.of(batch));
  }

  private static Map<String, BillEntry> bill(
      Batch batch, Rounding rounding, @Nullable Shown units) {
    Map<String, BillEntry> bill = new LinkedHashMap<>();
    for (Batch.BillRow row : batch.bill()) {
      double grams = row.grams().typical();
      bill.put(
          row.ingredient().id(),
          new BillEntry(
              grams,
              row.grams().low(),
              row.grams().high(),
              Lines.rounded(grams, rounding),
              row.asNeeded() ? AS_NEEDED : shown(grams, units)));
    }
    return bill;
  }

  /** A mass as it is read at the bench. */
  static String shown(double grams, @Nullable Shown units) {
    return units == Shown.US && grams > 0
        ? KitchenMeasure.poundsAndOunces(grams)
        : ScaleStep.shown(grams);
  }
}
