package tamis.plugin.dough;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * Baker's percentage: each ingredient's mass over the mass of all flour, times 100. The flour is
 * 100 % by definition, so the sum is above 100. Preferments, soakers and scalds join: their flour
 * and water count as the formula's own (the overall formula); other parts do not.
 */
public final class BakersPercentage
    implements Calculation<BakersPercentage.Input, BakersPercentage.Result> {

  /** The formula, and how much of it. */
  public record Input(
      @Described(value = "Id, id@revision, or the whole document", example = "poolish-bread")
          FormulaRef formula,
      @Described(
              "How much to make; as written if left out, and with 1 kg of flour if all is in percent")
          @Nullable To to) {}

  /** The formula in percent of its flour. */
  public record Result(
      @Described(value = "All flour, with that of the parts that join", unit = "g")
          double flourGrams,
      @Described(value = "All that is weighed, with the parts", unit = "g") double totalGrams,
      @Described(value = "Sum of the percentages of `lines`", unit = "%") double totalPercent,
      @Described(
              value = "Water lines that stay in the dough, those of the parts that join included",
              unit = "%",
              headline = true)
          double hydrationPercent,
      @Described(
              value =
                  "The same with the water inside milk, egg, butter and the like; the flour's own water is not counted",
              unit = "%")
          double totalWaterPercent,
      @Described(value = "Flour in preferments over all flour", unit = "%")
          double prefermentedFlourPercent,
      @Described(
              value =
                  "The overall formula: each ingredient over the formula and the parts that join",
              table = true)
          List<PercentLine> lines,
      @Described("Preferments, soakers and scalds, at any depth, each with a table of its own")
          List<PercentPart> parts,
      @Described(
              "What is weighed into the final dough, in percent of all flour, a part as one line")
          List<PercentLine> finalDough,
      @Described("Figures that are known in part only, as pointers into this result")
          List<String> incomplete) {}

  @Override
  public String name() {
    return "bakers-percentage";
  }

  @Override
  public String title() {
    return "A formula in percent of its flour, with hydration and preferments";
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
    return DoughExamples.percentages();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Batch batch = batch(input, kitchen, notes);
    Batch.Part root = batch.root();
    double flour = root.flour();
    if (flour <= 0) {
      throw noFlour(root);
    }
    Overall overall = Overall.of(root);
    Water water = Water.of(overall.joined(), notes);
    new PercentRemarks(notes).on(batch, overall, water);
    return Answer.of(
        new Result(
            flour,
            overall.grams(),
            100 * overall.grams() / flour,
            100 * water.lines() / flour,
            100 * water.total() / flour,
            100 * PercentPart.prefermentedFlour(root) / flour,
            overall.lines(flour),
            PercentPart.of(root),
            PercentPart.asMixed(root, flour),
            water.unknown().isEmpty() ? List.of() : List.of("/totalWaterPercent")),
        notes);
  }

  /** Percentages are free of scale, so a formula wholly in percent needs no size to be read. */
  private static Batch batch(Input input, Kitchen kitchen, Notes notes) {
    try {
      return kitchen.batch(input.formula(), input.to());
    } catch (Refusal refusal) {
      boolean sizeless =
          refusal.faults().stream().allMatch(fault -> fault.code() == FaultCode.NO_SIZE);
      if (input.to() != null || !sizeless) {
        throw refusal;
      }
      Batch batch = kitchen.batch(input.formula(), To.ofFlour(Mass.ofKilograms(1)));
      notes.remark(
          "size-assumed",
          "/to",
          "the formula is wholly in percent; masses are for 1 kg of flour, say in `to` how much to make");
      return batch;
    }
  }

  private static Refusal noFlour(Batch.Part root) {
    return new Refusal(
        new Fault(
            FaultCode.NO_FLOUR,
            "/formula",
            root.formula().name(),
            "a formula with a flour line, or with `flour` naming what counts as flour",
            "`"
                + root.formula().name()
                + "` has no flour, and baker's percent is of the flour; name in `flour` what counts as flour"));
  }
}
