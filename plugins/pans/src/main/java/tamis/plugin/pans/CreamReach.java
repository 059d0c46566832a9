package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.note.Notes;
import tamis.engine.pan.CakeShape;
import tamis.engine.pan.Coat;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Volume;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Which cakes this much cream would cover: {@code coating} the other way round, for a spare batch
 * from the freezer. Without cakes of the caller's own, usual ones are tried.
 */
public final class CreamReach implements Calculation<CreamReach.Input, CreamReach.Result> {
  static final Table CAKES =
      TableReader.read(
          CreamReach.class,
          "/tamis/plugin/pans/cakes.csv",
          "Usual cakes, to see what a batch of cream would cover",
          List.of("cake"));

  /** The cream on hand, how thick it is spread, and on what. */
  @ExactlyOne({"cream", "volume"})
  public record Input(
      @Described(value = "Mass of the cream", moreThan = "0 g", example = "850 g")
          @Nullable Mass cream,
      @Described(value = "Volume of the cream", moreThan = "0 ml", example = "1.5 l")
          @Nullable Volume volume,
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
      @Described(value = "Thickness on top", atLeast = "0 m", atMost = "1 m", example = "5 mm")
          Length top,
      @Described(value = "Thickness around", atLeast = "0 m", atMost = "1 m", example = "5 mm")
          Length side,
      @Described(
              value = "Thickness between two layers; nothing between unless told",
              atLeast = "0 m",
              atMost = "1 m",
              example = "5 mm")
          @Nullable Length between,
      @Described(value = "Cakes to try; usual ones if left out", optional = true, most = 200)
          List<CakeShape> cakes) {
    public Input {
      Faults faults = new Faults();
      new Cream(density, overrunPercent, mixDensity, formula).check(faults);
      if (cream != null && density == null && overrunPercent == null && formula == null) {
        faults.add(
            FaultCode.NO_DENSITY,
            "/cream",
            "a mass of cream covers something only with its `density`, its overrun or its"
                + " `formula`; or give its `volume`");
      }
      for (int i = 0; i < cakes.size(); i++) {
        CakeShape cake = cakes.get(i);
        try {
          new Coat(cake, top, side, between);
        } catch (Refusal refusal) {
          String which = "/cakes/" + i;
          refusal.faults().forEach(f -> faults.add(f.code(), which, f.message()));
        }
      }
      faults.refuseIfAny();
    }
  }

  /** What it covers. */
  public record Result(
      @Described(value = "Cream on hand", unit = "ml", headline = true) double millilitres,
      @Described(value = "Cream on hand", unit = "g") @Nullable Double grams,
      @Described(value = "Each cake, and how many of it the cream covers", table = true)
          List<Covered> covers) {}

  /** One kind of cake. */
  public record Covered(
      @Described("The cake in words") String cake,
      @Described(value = "Cream on one of them", unit = "ml") double millilitres,
      @Described(value = "Cream on one of them", unit = "g") @Nullable Double grams,
      @Described("So many of these cakes") double cakes,
      @Described("Whole cakes among them") int wholeCakes,
      @Described(value = "Left over after the whole cakes", unit = "ml") double leftMillilitres) {}

  @Override
  public String name() {
    return "cream-reach";
  }

  @Override
  public String title() {
    return "Which cakes a given amount of cream would cover";
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
    Length thin = Length.parse("5 mm");
    return List.of(
        new Input(
            Mass.ofGrams(850),
            null,
            Density.parse("0.55 g/ml"),
            null,
            null,
            null,
            thin,
            thin,
            thin,
            List.of()));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Cream cream =
        new Cream(input.density(), input.overrunPercent(), input.mixDensity(), input.formula());
    @Nullable Double density = cream.gramsPerMillilitre(kitchen);
    double millilitres = millilitres(input, density);
    List<Covered> covers = new ArrayList<>();
    if (input.cakes().isEmpty()) {
      usual(input, millilitres, density, covers, notes);
    } else {
      for (CakeShape cake : input.cakes()) {
        covers.add(covered(Named.of(cake), cake, input, millilitres, density));
      }
    }
    return Answer.of(
        new Result(millilitres, density == null ? null : millilitres * density, covers), notes);
  }

  private static double millilitres(Input input, @Nullable Double density) {
    if (input.volume() != null) {
      return input.volume().millilitres();
    }
    if (input.cream() == null || density == null) {
      throw Refusal.of(FaultCode.NO_DENSITY, "/cream", "the density of the cream is not known");
    }
    return input.cream().grams() / density;
  }

  private static void usual(
      Input input,
      double millilitres,
      @Nullable Double density,
      List<Covered> covers,
      Notes notes) {
    for (Row row : CAKES.rows()) {
      CakeShape cake = Named.cake(row);
      try {
        Covered covered = covered(row.text("title"), cake, input, millilitres, density);
        notes.cite(row, "/covers/" + covers.size() + "/cake");
        covers.add(covered);
      } catch (Refusal tooThick) {
        notes.remark(
            "cake-left-out",
            "",
            row.text("title") + " is left out: " + tooThick.faults().get(0).message());
      }
    }
  }

  private static Covered covered(
      String name, CakeShape cake, Input input, double millilitres, @Nullable Double density) {
    double one = new Coat(cake, input.top(), input.side(), input.between()).volumes().total();
    double whole = Reach.wholeOf(millilitres / one);
    return new Covered(
        name,
        one,
        density == null ? null : one * density,
        millilitres / one,
        (int) Math.min(Integer.MAX_VALUE, whole),
        Math.max(0, millilitres - whole * one));
  }
}
