package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pan;
import tamis.engine.pan.PanRef;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * How many times a formula is made for other pans: the volumes in proportion, or the batter that
 * stands in them where how full they are is told. Depth is compared pan by pan with the published
 * rule; what it means for time and heat is a remark, never a promise.
 */
public final class PanConversion implements Calculation<PanConversion.Input, PanConversion.Result> {

  /** The pans a formula is written for, and those on the shelf. */
  @ExactlyOne({"from", "formula"})
  public record Input(
      @Described(value = "Pans the batter was made for", optional = true, most = 200)
          List<PanCount> from,
      @Described(
              value = "The formula whose `yield.pans` are the pans it was made for",
              example = "coffee-layer-cake")
          @Nullable FormulaRef formula,
      @Described(value = "Pans to fill instead", fewest = 1, most = 200) List<PanCount> into,
      @Described(value = "Kind of batter, as in table fills", example = "butter-cake", most = 60)
          @Nullable String batter) {
    public Input {
      Faults faults = new Faults();
      refuseMass(from, "/from", faults);
      refuseMass(into, "/into", faults);
      if (batter != null) {
        faults.gather("", () -> Fill.ofBatter(batter));
      }
      if (!from.isEmpty()) {
        refuseHalfTold(from, into, faults);
      }
      faults.refuseIfAny();
    }

    private static void refuseMass(List<PanCount> pans, String at, Faults faults) {
      for (int i = 0; i < pans.size(); i++) {
        if (pans.get(i).mass() != null) {
          faults.add(
              FaultCode.NOT_ALLOWED,
              at + "/" + i + "/mass",
              "pans are compared by volume; a mass for each pan is given in `to.pans`");
        }
      }
    }
  }

  /** The factor, and how the batter stands in each pan. */
  public record Result(
      @Described(value = "Times the batter", headline = true) double factor,
      @Described("Least, by published capacities or by geometry") double low,
      @Described("Most, by published capacities or by geometry") double high,
      @Described("Times the area of the openings, where all are known") @Nullable Double areaFactor,
      @Described(value = "All pans it was made for, to the rim", unit = "ml")
          double fromMillilitres,
      @Described(value = "All pans to fill, to the rim", unit = "ml") double intoMillilitres,
      @Described(value = "Batter at this factor, made up", unit = "g") @Nullable Double grams,
      @Described("The pans it was made for") List<PanShare> from,
      @Described(value = "The pans to fill", table = true) List<PanShare> into) {}

  @Override
  public String name() {
    return "pan-conversion";
  }

  @Override
  public String title() {
    return "How many times a formula is made for other pans, and how deep it stands in them";
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
    PanRef described = PanRef.of(Pan.round(Length.ofCentimetres(20), Length.ofCentimetres(5)));
    return List.of(
        new Input(
            List.of(count("round-9x2-in", 2)),
            null,
            List.of(count("rectangle-13x9x2-in", 1)),
            null),
        new Input(
            List.of(new PanCount(described, 1, null, null)),
            null,
            List.of(count("muffin-tray-of-12-7x3-cm", 2)),
            "butter-cake"));
  }

  private static PanCount count(String id, int number) {
    return new PanCount(PanRef.parse(id), number, null, null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    List<PanCount> made = input.formula() == null ? input.from() : pansOf(input, kitchen);
    Fill fill = Fill.of(null, input.batter());
    PanSet from =
        PanSet.of(made, fill, "from", input.formula() == null ? "/from" : "/formula", notes);
    PanSet into = PanSet.of(input.into(), fill, "into", "/into", notes);
    Spread factor = into.over(from);
    from.citeFill(notes);
    into.citeFill(notes);
    @Nullable Double grams = null;
    if (input.formula() != null) {
      Batch batch = kitchen.batch(input.formula(), To.ofFactor(factor.typical()));
      batch.remarks().forEach(notes::add);
      grams = batch.root().madeUp().typical();
    }
    return Answer.of(
        new Result(
            factor.typical(),
            factor.low(),
            factor.high(),
            into.areaOver(from),
            from.millilitres(),
            into.millilitres(),
            grams,
            from.shares(null, null, notes),
            into.shares(from, grams, notes)),
        notes);
  }

  private static List<PanCount> pansOf(Input input, Kitchen kitchen) {
    FormulaRef reference = Objects.requireNonNull(input.formula());
    List<PanCount> pans = kitchen.formula(reference).yieldOrNothing().pans();
    if (pans.isEmpty()) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          "/formula",
          "the formula does not say in `yield.pans` which pans it fills; give them as `from`");
    }
    List<PanCount> volumes = new ArrayList<>();
    pans.forEach(pan -> volumes.add(new PanCount(pan.pan(), pan.count(), pan.fill(), null)));
    Faults faults = new Faults();
    refuseHalfTold(volumes, input.into(), faults);
    faults.refuseIfAny();
    return volumes;
  }

  /** How full pans are is told for all of them or for none. */
  private static void refuseHalfTold(List<PanCount> from, List<PanCount> into, Faults faults) {
    long told =
        from.stream().filter(pan -> pan.fill() != null).count()
            + into.stream().filter(pan -> pan.fill() != null).count();
    if (told > 0 && told < from.size() + into.size()) {
      faults.add(
          FaultCode.INCONSISTENT,
          "/into",
          "how full pans are is told for "
              + told
              + " of "
              + (from.size() + into.size())
              + " pans; give `fill` for all of them or for none");
    }
  }
}
