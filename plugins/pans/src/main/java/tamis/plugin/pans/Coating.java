package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.note.Notes;
import tamis.engine.pan.CakeShape;
import tamis.engine.pan.Coat;
import tamis.engine.pan.CoatVolumes;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * Cream that a cake takes: the outer solid less the inner one, not area times thickness. With cream
 * on hand it also tells how far that goes on this cake.
 */
public final class Coating implements Calculation<Coating.Input, Coating.Result> {

  /** The cake, how thick it is coated, and what the cream weighs. */
  @ExactlyOne({"cake", "tiers"})
  public record Input(
      @Described("The bare cake") @Nullable CakeShape cake,
      @Described(
              value = "Bare cakes of a tiered cake, the lowest first",
              optional = true,
              most = 20)
          List<CakeShape> tiers,
      @Described(value = "Thickness on top", atLeast = "0 m", atMost = "1 m", example = "5 mm")
          Length top,
      @Described(value = "Thickness around", atLeast = "0 m", atMost = "1 m", example = "5 mm")
          Length side,
      @Described(
              value = "Thickness between two layers; nothing between unless told",
              atLeast = "0 m",
              atMost = "1 m",
              example = "6 mm")
          @Nullable Length between,
      @Described(
              value = "Thin coat under the last one, on top and around, that holds the crumbs",
              atLeast = "0 m",
              atMost = "1 m",
              example = "2 mm")
          @Nullable Length crumb,
      @Described(value = "More for piping, as a part of all the rest", example = "10 %")
          @Nullable Fraction piping,
      @Described(value = "Density of the cream as it is spread", example = "0.55 g/ml")
          @Nullable Density density,
      @Described(
              value = "Overrun of the whipped cream: 100 % is twice the volume of its mix",
              atLeast = "0",
              atMost = "2000",
              example = "80")
          @Nullable Double overrunPercent,
      @Described(value = "Density of the mix before it is whipped", example = "1 g/ml")
          @Nullable Density mixDensity,
      @Described(
              value = "Formula of the cream; its yield's density counts unless another is given",
              example = "coffee-meringue-cream")
          @Nullable FormulaRef formula,
      @Described(value = "Cream on hand: how far would it go?", moreThan = "0 g", example = "850 g")
          @Nullable Mass cream) {
    public Input {
      Faults faults = new Faults();
      faults.gather("", () -> new Coat(cake, top, side, between, tiers, crumb, piping));
      new Cream(density, overrunPercent, mixDensity, formula).check(faults);
      if (cream != null && density == null && overrunPercent == null && formula == null) {
        faults.add(
            FaultCode.NO_DENSITY,
            "/cream",
            "a mass of cream covers something only with its `density`, its overrun or its"
                + " `formula`");
      }
      faults.refuseIfAny();
    }

    Coat coat() {
      return new Coat(cake, top, side, between, tiers, crumb, piping);
    }

    Cream told() {
      return new Cream(density, overrunPercent, mixDensity, formula);
    }
  }

  /** What it takes. */
  public record Result(
      @Described("Cream alone; the ring where top and side meet counts with the side")
          CoatVolumes millilitres,
      @Described(value = "Mass of the cream", unit = "g") @Nullable Double grams,
      @Described("Times the cream's formula") @Nullable Double factor,
      @Described(value = "The cake as it stands, all tiers", unit = "cm") double heightCm,
      @Described(value = "Its widest, coated", unit = "cm") double widthCm,
      @Described(value = "Each tier, the lowest first", table = true) List<CoatedTier> tiers,
      @Described("How far the cream on hand goes") @Nullable Reach reach) {}

  @Override
  public String name() {
    return "coating";
  }

  @Override
  public String title() {
    return "Cream that a cake takes on top, around and between its layers";
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
    return CoatingExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Coat coat = input.coat();
    CoatVolumes volumes = coat.volumes();
    List<CoatedTier> tiers = new ArrayList<>();
    double height = 0;
    for (CakeShape cake : coat.cakes()) {
      CoatedTier tier = CoatedTier.of(cake, coat);
      tiers.add(tier);
      height += tier.finishedHeightCm();
    }
    if (input.between() != null && tiers.stream().allMatch(tier -> tier.layers() == 1)) {
      notes.remark(
          "between-not-used", "/between", "the cake has one layer, so nothing comes between");
    }
    if (tiers.size() > 1) {
      notes.remark(
          "coated-under-tiers",
          "/tiers",
          "each tier is coated whole, also where the next one stands on it");
    }
    @Nullable Double density = input.told().gramsPerMillilitre(kitchen);
    @Nullable Double grams = density == null ? null : volumes.total() * density;
    @Nullable Double factor = grams == null ? null : input.told().factor(grams, kitchen, notes);
    @Nullable Reach reach =
        input.cream() == null || density == null
            ? null
            : Reach.of(input.cream().grams() / density, density, coat);
    return Answer.of(
        new Result(volumes, grams, factor, height, tiers.get(0).finishedWidthCm(), tiers, reach),
        notes);
  }

  @Override
  public Map<String, Function<Answer<Result>, String>> renderings() {
    return Map.of("image/svg+xml", answer -> new CakeSection(answer.result()).svg());
  }
}
