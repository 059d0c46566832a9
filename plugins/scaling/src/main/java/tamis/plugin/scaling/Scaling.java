package tamis.plugin.scaling;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.note.Notes;
import tamis.engine.quantity.KitchenMeasure;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
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
    Batch batch = batch(input, rounding, kitchen, notes);
    batch.remarks().forEach(notes::add);
    batch
        .sources()
        .forEach(
            s ->
                s.pointers()
                    .forEach(
                        p ->
                            notes.cite(s.table(), s.row(), s.source(), s.locator(), s.basis(), p)));
    Lines lines = new Lines(rounding, input.units(), altitude(input, notes), notes);
    List<ScaledLine> scaled = lines.of(batch);
    Batch.Part root = batch.root();
    Yield yield = root.formula().yieldOrNothing();
    double changed = lines.changeOfMass(batch);
    return Answer.of(
        new Result(
            batch.factor(),
            root.mass().typical() + changed,
            root.weighed().typical() + changed,
            root.madeUp().typical() + changed * yield.afterMakeUp(),
            root.finished().typical() + changed * yield.afterMakeUp() * yield.afterBake(),
            yield.portions() == null ? null : yield.portions() * batch.factor(),
            batch.limitedBy(),
            scaled,
            bill(scaled, rounding, input.units()),
            ScaledPart.of(root),
            batch.byProducts().stream()
                .map(b -> new LeftOver(b.ingredient(), b.grams(), b.from()))
                .toList(),
            WholeEggs.of(batch)),
        notes);
  }

  private static Batch batch(Input input, Rounding rounding, Kitchen kitchen, Notes notes) {
    Batch batch = kitchen.batch(input.formula(), input.to());
    List<WholeEggs> eggs = WholeEggs.of(batch);
    if (!rounding.wantsWholeEggs() || eggs.isEmpty()) {
      return batch;
    }
    double factor = eggs.get(0).nearestFactor();
    double percent = (factor / batch.factor() - 1) * 100;
    notes.remark(
        "whole-eggs",
        "/rounding/wholeEggs",
        String.format(
            Locale.ROOT,
            "the batch is made %.1f %% %s, so that whole eggs are used",
            Math.abs(percent),
            percent < 0 ? "smaller" : "larger"));
    Batch whole =
        kitchen.batch(
            input.formula(),
            To.ofMass(Mass.ofGrams(batch.root().madeUp().typical() * factor / batch.factor())));
    return whole;
  }

  private static @Nullable AltitudeChange altitude(Input input, Notes notes) {
    if (input.altitude() == null || input.altitude().metres() <= 0) {
      return null;
    }
    notes.estimate(
        "altitude-table",
        "/altitude",
        "the change at altitude is published for shortened cakes and taken in proportion between its rows; try one cake first");
    if (input.altitude().metres() > AltitudeChange.highestMetres()) {
      notes.estimate(
          "beyond-table",
          "/altitude",
          "the table ends at 7500 ft (2286 m); its last row is used above");
    }
    return new AltitudeChange(input.altitude().metres(), notes);
  }

  private static Map<String, BillEntry> bill(
      List<ScaledLine> lines, Rounding rounding, @Nullable Shown units) {
    Map<String, double[]> sums = new LinkedHashMap<>();
    for (ScaledLine line : lines) {
      double[] sum = sums.computeIfAbsent(line.ingredient(), id -> new double[3]);
      sum[0] += line.grams();
      sum[1] += line.low();
      sum[2] += line.high();
    }
    Map<String, BillEntry> bill = new LinkedHashMap<>();
    sums.forEach(
        (id, sum) ->
            bill.put(
                id,
                new BillEntry(
                    sum[0],
                    sum[1],
                    sum[2],
                    Lines.rounded(sum[0], rounding),
                    shown(sum[0], units))));
    return bill;
  }

  /** A mass as it is read at the bench. */
  static String shown(double grams, @Nullable Shown units) {
    if (grams == 0) {
      return "as needed";
    }
    return units == Shown.US ? KitchenMeasure.poundsAndOunces(grams) : ScaleStep.shown(grams);
  }
}
