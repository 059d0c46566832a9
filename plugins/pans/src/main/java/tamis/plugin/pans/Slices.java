package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.pan.CakeShape;
import tamis.engine.quantity.Length;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How many a cake serves: its area from above over that of a slice, rounded down, tier by tier;
 * beside it what a printed chart says, where one was found. Charts differ.
 */
public final class Slices implements Calculation<Slices.Input, Slices.Result> {
  static final Table SERVINGS =
      TableReader.read(
          Slices.class,
          "/tamis/plugin/pans/slices.csv",
          "Usual slices of cakes, seen from above",
          List.of("serving"));
  private static final String WEDDING = "wedding";

  /** The cake and how it is cut. */
  @ExactlyOne({"cake", "tiers"})
  public record Input(
      @Described("The cake, seen from above") @Nullable Outline cake,
      @Described(value = "Tiers, the lowest first", optional = true, most = 20) List<Outline> tiers,
      @Described(
              value = "Kind of serving, as in table slices; wedding if left out",
              example = "party",
              most = 60)
          @Nullable String serving,
      @Described("A slice of another size") @Nullable SliceSize slice,
      @Described("The highest tier is kept back and not served") @Nullable Boolean keepTop,
      @Described(value = "Guests to serve", atLeast = "1", atMost = "100000", example = "80")
          @Nullable Integer guests) {
    public Input {
      Faults faults = new Faults();
      if (serving != null && slice != null) {
        faults.add(FaultCode.EXACTLY_ONE, "/slice", "give `serving` or `slice`, not both");
      }
      if (serving != null) {
        faults.gather("", () -> Fill.row(SERVINGS, serving, "/serving", "a kind of serving"));
      }
      for (int i = 1; i < tiers.size(); i++) {
        if (tiers.get(i).plain().widestCm() > tiers.get(i - 1).plain().widestCm()) {
          faults.add(
              FaultCode.INCONSISTENT,
              "/tiers/" + i,
              "tiers are told from the lowest: this one is wider than the one it stands on");
        }
      }
      if (Boolean.TRUE.equals(keepTop) && tiers.size() < 2) {
        faults.add(
            FaultCode.INCONSISTENT, "/keepTop", "only a cake of two tiers or more keeps one back");
      }
      faults.refuseIfAny();
    }
  }

  /** A cake seen from above. */
  public record Outline(
      @Described(value = "Shape seen from above", example = "round") CakeShape.Shape shape,
      @Described(
              value = "Diameter of a round cake",
              moreThan = "0 m",
              atMost = "5 m",
              example = "8 in")
          @Nullable Length diameter,
      @Described(value = "Side of a square cake", moreThan = "0 m", atMost = "5 m")
          @Nullable Length side,
      @Described(value = "Length of a tray", moreThan = "0 m", atMost = "5 m")
          @Nullable Length length,
      @Described(value = "Width of a tray", moreThan = "0 m", atMost = "5 m")
          @Nullable Length width) {
    private static final Length ANY_HEIGHT = Length.ofCentimetres(1);

    public Outline {
      new CakeShape(shape, diameter, side, length, width, 1, ANY_HEIGHT);
    }

    CakeShape plain() {
      return new CakeShape(shape, diameter, side, length, width, 1, ANY_HEIGHT);
    }
  }

  /** A slice seen from above. */
  public record SliceSize(
      @Described(value = "Length of a slice", moreThan = "0 m", atMost = "1 m", example = "2 in")
          Length length,
      @Described(value = "Width of a slice", moreThan = "0 m", atMost = "1 m", example = "1 in")
          Length width) {
    double squareCm() {
      return length.centimetres() * width.centimetres();
    }
  }

  /** What it serves. */
  public record Result(
      @Described(value = "Portions, each tier rounded down", headline = true) int portions,
      @Described("Area of all tiers over that of a slice") double byArea,
      @Described(value = "One slice, seen from above", unit = "cm²") double sliceSquareCm,
      @Described("Guests that are left without a slice") @Nullable Integer missing,
      @Described(value = "Each tier, the lowest first", table = true) List<ServedTier> tiers) {}

  /** One tier. */
  public record ServedTier(
      @Described("The tier in words") String tier,
      @Described(value = "Area seen from above", unit = "cm²") double areaSquareCm,
      @Described("Area over that of a slice") double byArea,
      @Described("Portions, rounded down") int portions,
      @Described("Whole slices cut in straight rows, of a square or tray") @Nullable Integer byRows,
      @Described("What a printed chart says, the least") @Nullable Double chartLow,
      @Described("What a printed chart says, the most") @Nullable Double chartHigh,
      @Described("Whether the tier is kept back and not counted") boolean kept) {}

  @Override
  public String name() {
    return "slices";
  }

  @Override
  public String title() {
    return "How many portions a cake or its tiers give, beside what printed charts say";
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
        new Input(round("8 in"), List.of(), null, null, null, null),
        new Input(
            null,
            List.of(round("12 in"), round("10 in"), round("8 in")),
            "wedding",
            null,
            true,
            90),
        new Input(
            new Outline(
                CakeShape.Shape.RECTANGLE,
                null,
                null,
                Length.parse("60 cm"),
                Length.parse("40 cm")),
            List.of(),
            "tray",
            null,
            null,
            null));
  }

  private static Outline round(String diameter) {
    return new Outline(CakeShape.Shape.ROUND, Length.parse(diameter), null, null, null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    SliceSize slice = slice(input, notes);
    List<Outline> outlines = input.cake() == null ? input.tiers() : List.of(input.cake());
    List<ServedTier> tiers = new ArrayList<>();
    int portions = 0;
    double byArea = 0;
    for (Outline outline : outlines) {
      boolean kept = Boolean.TRUE.equals(input.keepTop()) && tiers.size() == outlines.size() - 1;
      ServedTier tier = tier(outline.plain(), slice, kept, "/tiers/" + tiers.size(), notes);
      tiers.add(tier);
      portions += kept ? 0 : tier.portions();
      byArea += kept ? 0 : tier.byArea();
    }
    notes.remark(
        "charts-differ",
        "",
        "portions are counted by area and rounded down; printed charts differ by a few, and a"
            + " round cake is never cut without loss");
    @Nullable Integer missing =
        input.guests() == null ? null : Math.max(0, input.guests() - portions);
    return Answer.of(new Result(portions, byArea, slice.squareCm(), missing, tiers), notes);
  }

  private static SliceSize slice(Input input, Notes notes) {
    if (input.slice() != null) {
      return input.slice();
    }
    String serving = input.serving() == null ? WEDDING : input.serving();
    Row row = Fill.row(SERVINGS, serving, "/serving", "a kind of serving");
    notes.cite(row, "/sliceSquareCm");
    if (input.serving() == null) {
      notes.remark(
          "serving-assumed",
          "/serving",
          "slices of 1 × 2 in (2.5 × 5 cm) are taken; say `serving` or `slice` for others");
    }
    return new SliceSize(
        Length.ofCentimetres(row.number("length_cm")),
        Length.ofCentimetres(row.number("width_cm")));
  }

  private static ServedTier tier(
      CakeShape cake, SliceSize slice, boolean kept, String pointer, Notes notes) {
    double byArea = cake.topSquareCm() / slice.squareCm();
    @Nullable Row chart = ServingChart.row(cake, slice);
    if (chart != null) {
      notes.cite(chart, pointer + "/chartLow");
      notes.cite(chart, pointer + "/chartHigh");
    }
    return new ServedTier(
        Named.outline(cake),
        cake.topSquareCm(),
        byArea,
        (int) Math.floor(byArea * (1 + 1e-9)),
        ServingChart.byRows(cake, slice),
        chart == null ? null : chart.number("low_portions"),
        chart == null ? null : chart.number("high_portions"),
        kept);
  }
}
