package tamis.plugin.pans;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pan;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Volume;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * What a pan holds and how much goes into it. A table id answers its published capacity, dimensions
 * answer exact geometry to the rim, water that the owner filled in beats both; where several are
 * known the spread shows them. How much goes in follows the kind of batter, or what it rises to, or
 * for a loaf the mass of dough.
 */
public final class PanVolume implements Calculation<PanVolume.Input, PanVolume.Result> {

  /** A pan and what is to go into it. */
  public record Input(
      @Described(
              value = "Id in the table of pans, or shape with dimensions",
              example = "round-8x2-in")
          PanRef pan,
      @Described(value = "How many; one if left out", atLeast = "1", atMost = "10000")
          @Nullable Integer count,
      @Described(
              value = "Water one pan held to the rim, measured; beats every other figure",
              moreThan = "0 ml",
              example = "1.6 l")
          @Nullable Volume capacity,
      @Described(value = "Kind of batter, as in table fills", example = "butter-cake", most = 60)
          @Nullable String batter,
      @Described(value = "Kind of loaf, as in table dough-tins", example = "open-tin", most = 60)
          @Nullable String dough,
      @Described(value = "Part of the volume that is filled", moreThan = "0", example = "0.6")
          @Nullable Fraction fill,
      @Described(
              value =
                  "Volume of the baked cake over that of the batter: filled so that it ends at the rim",
              atLeast = "1",
              atMost = "20",
              example = "1.6")
          @Nullable Double rise,
      @Described(value = "Density of the batter", example = "0.85 g/ml")
          @Nullable Density batterDensity,
      @Described(
              value = "Density of the baked cake; with `batterDensity` it tells the rise",
              example = "0.45 g/ml")
          @Nullable Density bakedDensity,
      @Described(
              value = "Batter or dough on hand for all of the pans, to see whether it fits",
              moreThan = "0 g",
              example = "900 g")
          @Nullable Mass mass) {
    public Input {
      Faults faults = new Faults();
      long ways =
          List.of(batter != null, dough != null, fill != null, rise != null, bakedDensity != null)
              .stream()
              .filter(given -> given)
              .count();
      if (ways > 1) {
        faults.add(
            FaultCode.EXACTLY_ONE,
            "",
            "say how full the pan is in one way: batter, dough, fill, rise or bakedDensity");
      }
      if (bakedDensity != null && batterDensity == null) {
        faults.add(
            FaultCode.MISSING,
            "/batterDensity",
            "`bakedDensity` tells the rise only with `batterDensity`");
      }
      if (mass != null && batterDensity == null && dough == null) {
        faults.add(
            FaultCode.MISSING,
            "/batterDensity",
            "a mass fills a pan by its density: give `batterDensity`, or for a loaf `dough`");
      }
      if (batter != null) {
        faults.gather("", () -> Fill.ofBatter(batter));
      }
      if (dough != null) {
        faults.gather("", () -> DoughTin.of(dough));
      }
      faults.refuseIfAny();
    }

    int number() {
      return count == null ? 1 : count;
    }
  }

  /** What it holds, and what goes in. All figures but depth and height are those of all pans. */
  public record Result(
      @Described(value = "To the rim", unit = "ml", headline = true) double millilitres,
      @Described(value = "The least of the figures that are known", unit = "ml") double low,
      @Described(value = "The most of the figures that are known", unit = "ml") double high,
      @Described(value = "Capacity as published", unit = "ml")
          @Nullable Double publishedMillilitres,
      @Described(value = "Exact geometry to the rim", unit = "ml")
          @Nullable Double geometricMillilitres,
      @Described(value = "Opening at the rim", unit = "cm²") @Nullable Double areaSquareCm,
      @Described(value = "Inner height", unit = "cm") @Nullable Double heightCm,
      @Described("Hollows of one tray, if more than one") @Nullable Integer cavities,
      @Described(value = "Part that is filled", unit = "1") @Nullable Double fillPart,
      @Described(value = "Batter that goes in", unit = "ml") @Nullable Double fillMillilitres,
      @Described(value = "The least that is usual", unit = "ml")
          @Nullable Double fillLowMillilitres,
      @Described(value = "The most that is usual", unit = "ml")
          @Nullable Double fillHighMillilitres,
      @Described(value = "How high the batter stands", unit = "cm") @Nullable Double fillDepthCm,
      @Described(value = "Batter or dough that goes in", unit = "g") @Nullable Double fillGrams,
      @Described(value = "The least that is usual", unit = "g") @Nullable Double fillLowGrams,
      @Described(value = "The most that is usual", unit = "g") @Nullable Double fillHighGrams,
      @Described(value = "Part that the mass on hand fills", unit = "1")
          @Nullable Double massPart) {}

  @Override
  public String name() {
    return "pan-volume";
  }

  @Override
  public String title() {
    return "What a pan holds to the rim, and how much batter or dough goes into it";
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
    PanRef round = PanRef.parse("round-8x2-in");
    PanRef described = PanRef.of(Pan.round(Length.ofCentimetres(20), Length.ofCentimetres(5)));
    return List.of(
        new Input(round, null, null, null, null, null, null, null, null, null),
        new Input(
            described,
            2,
            null,
            "butter-cake",
            null,
            null,
            null,
            Density.parse("0.85 g/ml"),
            null,
            Mass.ofGrams(1600)),
        new Input(
            PanRef.parse("loaf-8_5x4_5x2_5-in"),
            null,
            null,
            null,
            "open-tin",
            null,
            null,
            null,
            null,
            null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Held held = Held.of(input.pan(), input.capacity(), notes);
    Filling filling = Filling.of(input, held.millilitres().times(input.number()), notes);
    Pans pans = Pans.standard();
    double number = input.number();
    int cavities = pans.cavities(input.pan());
    @Nullable Spread millilitres = filling.millilitres();
    @Nullable Spread grams = filling.grams();
    return Answer.of(
        new Result(
            held.millilitres().typical() * number,
            held.millilitres().low() * number,
            held.millilitres().high() * number,
            times(pans.publishedMillilitres(input.pan()), number),
            times(pans.geometricMillilitres(input.pan()), number),
            times(pans.areaSquareCm(input.pan()), number),
            pans.heightCm(input.pan()),
            cavities == 1 ? null : cavities,
            filling.part() == null ? null : filling.part().typical(),
            millilitres == null ? null : millilitres.typical(),
            millilitres == null ? null : millilitres.low(),
            millilitres == null ? null : millilitres.high(),
            filling.part() == null ? null : pans.depthCm(input.pan(), filling.part().typical()),
            grams == null ? null : grams.typical(),
            grams == null ? null : grams.low(),
            grams == null ? null : grams.high(),
            filling.massPart()),
        notes);
  }

  private static @Nullable Double times(@Nullable Double one, double number) {
    return one == null ? null : one * number;
  }
}
