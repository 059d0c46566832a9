package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * The water activity of a syrup, a water phase or a formula, after Norrish and by a second method,
 * beside the least water activities at which organisms grow.
 */
public final class WaterActivity implements Calculation<WaterActivity.Input, WaterActivity.Result> {
  static final Table LIMITS =
      TableReader.read(
          WaterActivity.class,
          "/tamis/plugin/stages/growth-limits.csv",
          "Least water activity at which organisms grow",
          List.of("organism"));

  /** Sugar is no longer wholly dissolved above this, at room temperature. */
  private static final double SATURATED_PERCENT = 67;

  /** What the water activity is wanted of. */
  @ExactlyOne({"sucrosePercent", "phase", "formula"})
  public record Input(
      @Described(
              value = "Sucrose in a syrup",
              unit = "%",
              atLeast = "0",
              atMost = "85",
              example = "60")
          @Nullable Double sucrosePercent,
      @Described("Water with what is dissolved in it") @Nullable WaterPhase phase,
      @Described(
              value = "Id, id@revision, or the whole document",
              example = "coffee-meringue-cream")
          @Nullable FormulaRef formula,
      @Described("At which size the formula is made; as written if left out") @Nullable To to) {
    public Input {
      if (to != null && formula == null) {
        throw Refusal.of(FaultCode.MISSING, "/formula", "`to` sizes a formula, but none is given");
      }
    }
  }

  /** The water activity. */
  public record Result(
      @Described(value = "By the first method", headline = true) double waterActivity,
      @Described("The lower of all methods") double low,
      @Described("The higher of all methods") double high,
      @Described("The first method") String method,
      @Described("Each method") List<Method> methods,
      @Described(value = "Part of sugar and salt in the water phase", unit = "%")
          double solutesPercent,
      @Described(value = "Organisms with the least water activity at which they grow", table = true)
          List<GrowthLimit> limits) {}

  /** One method. */
  public record Method(
      @Described("Its name") String method,
      @Described("Water activity by it") double waterActivity) {}

  /** One organism. */
  public record GrowthLimit(
      @Described("Which") String organism,
      @Described("Least water activity at which it grows") double leastWaterActivity,
      @Described("Whether the food lies at or above that, by the higher method") boolean canGrow) {}

  @Override
  public String name() {
    return "water-activity";
  }

  @Override
  public String title() {
    return "Water activity of a syrup or filling, and what can grow in it";
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
        new Input(60.0, null, null, null), new Input(null, WaterPhase.ofSucrose(67), null, null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    WaterPhase phase = phase(input, kitchen, notes);
    double dissolved = 0;
    for (Solute solute : Solute.values()) {
      if (phase.solutes().containsKey(solute)) {
        dissolved +=
            phase.solutes().getOrDefault(solute, tamis.engine.quantity.Mass.zero()).grams();
        notes.cite(solute.row(), "/waterActivity");
      }
    }
    double percent = 100 * dissolved / (dissolved + phase.water().grams());
    List<Method> methods = methods(phase, percent);
    double low = methods.stream().mapToDouble(Method::waterActivity).min().orElse(1);
    double high = methods.stream().mapToDouble(Method::waterActivity).max().orElse(1);
    Equation.NORRISH.cite(notes, "/waterActivity");
    Equation.MONEY_BORN.cite(notes, "/methods");
    if (percent > SATURATED_PERCENT) {
      notes.remark(
          "beyond-saturation",
          "",
          String.format(
              Locale.ROOT,
              "%.0f %% is more sugar than water holds at room temperature: if it crystallises, the"
                  + " rest comes to the water activity of a saturated syrup",
              percent));
    }
    notes.caution("keeping", "", Cautions.KEEPING);
    return Answer.of(
        new Result(phase.norrish(), low, high, "norrish", methods, percent, limits(high, notes)),
        notes);
  }

  private static WaterPhase phase(Input input, Kitchen kitchen, Notes notes) {
    if (input.phase() != null) {
      return input.phase();
    }
    if (input.formula() == null) {
      return WaterPhase.ofSucrose(input.sucrosePercent() == null ? 0 : input.sucrosePercent());
    }
    Batch batch = kitchen.batch(input.formula(), input.to());
    double baked = batch.root().madeUp().typical() - batch.root().finished().typical();
    double share =
        batch.root().mass().typical() == 0
            ? 0
            : baked / batch.root().madeUp().typical() * batch.root().mass().typical();
    Composition mix = batch.composition().withoutWater(Math.max(0, share));
    for (Nutrient needed : List.of(Nutrient.WATER, Nutrient.SUGARS)) {
      if (mix.known(needed) < 0.999) {
        notes.estimate(
            "partly-known",
            "/formula",
            String.format(
                Locale.ROOT,
                "%s is known of %.0f %% of the mass only",
                needed.words(),
                mix.known(needed) * 100));
      }
    }
    if (mix.amount(Nutrient.WATER) <= 0) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE, "/formula", "no water is left in it: there is no water activity");
    }
    notes.estimate(
        "formula-water-phase",
        "/formula",
        "all its water is taken to hold all its sugar and salt; starch and protein bind some of it,"
            + " so measure what is sold");
    return WaterPhase.of(mix);
  }

  private static List<Method> methods(WaterPhase phase, double percent) {
    List<Method> methods = new ArrayList<>();
    methods.add(new Method("norrish", phase.norrish()));
    methods.add(new Method("money-born", phase.moneyBorn()));
    if (phase.solutes().keySet().equals(java.util.Set.of(Solute.SUCROSE))) {
      methods.add(new Method("starzak-peacock", Solutes.SUCROSE.waterActivity(percent, 25)));
    }
    return methods;
  }

  private static List<GrowthLimit> limits(double high, Notes notes) {
    List<GrowthLimit> limits = new ArrayList<>();
    for (Row row : LIMITS.rows()) {
      double least = row.number("least_water_activity");
      notes.cite(row, "/limits");
      limits.add(new GrowthLimit(row.text("organism"), least, high >= least));
    }
    return limits;
  }
}
