package tamis.plugin.pans;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Volume;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * The best tins on the shelf for a batch, by exact search over all ways to take them: none is
 * filled above its part, the depth is kept where one is asked for, then the fewest tins, then the
 * least empty room in whole millilitres (or the other way round). The batter is shared so that all
 * tins are as full.
 */
public final class TinChoice implements Calculation<TinChoice.Input, TinChoice.Result> {

  /** A batch and what stands on the shelf. */
  @ExactlyOne({"volume", "mass", "formula"})
  public record Input(
      @Described(value = "Batter", moreThan = "0 ml", example = "3.2 l") @Nullable Volume volume,
      @Described(
              value = "Batter by mass, with `batterDensity`",
              moreThan = "0 g",
              example = "2.7 kg")
          @Nullable Mass mass,
      @Described(
              value =
                  "The formula, made at `to`; its batter density counts, else the pans it fills",
              example = "coffee-layer-cake")
          @Nullable FormulaRef formula,
      @Described("How much of the formula is made; as written if left out") @Nullable To to,
      @Described(value = "Density of the batter", example = "0.85 g/ml")
          @Nullable Density batterDensity,
      @Described(
              value = "Pans on the shelf, how many of each, and to which part each may be filled",
              fewest = 1,
              most = 30)
          List<PanCount> shelf,
      @Described(value = "Part to which pans are filled at most", moreThan = "0", example = "0.6")
          @Nullable Fraction fill,
      @Described(value = "Kind of batter, as in table fills", example = "butter-cake", most = 60)
          @Nullable String batter,
      @Described(
              value = "How high the batter should stand; kept within the rule for other pans",
              moreThan = "0 m",
              atMost = "1 m",
              example = "3 cm")
          @Nullable Length depth,
      @Described("What comes first: the fewest tins (if left out), or the least empty room")
          @Nullable Prefer prefer) {
    public Input {
      Faults faults = new Faults();
      if (mass != null && batterDensity == null) {
        faults.add(
            FaultCode.MISSING, "/batterDensity", "a mass of batter needs its `batterDensity`");
      }
      if (to != null && formula == null) {
        faults.add(FaultCode.NOT_ALLOWED, "/to", "`to` says how much of a `formula` is made");
      }
      if (fill != null && batter != null) {
        faults.add(FaultCode.EXACTLY_ONE, "/fill", "give `fill` or `batter`, not both");
      }
      if (batter != null) {
        faults.gather("", () -> Fill.ofBatter(batter));
      }
      for (int i = 0; i < shelf.size(); i++) {
        if (shelf.get(i).mass() != null) {
          faults.add(
              FaultCode.NOT_ALLOWED,
              "/shelf/" + i + "/mass",
              "tins are chosen by volume: give `fill`, the part to which it may be filled");
        }
      }
      faults.refuseIfAny();
    }
  }

  /** What comes first. */
  public enum Prefer {
    FEWEST_TINS,
    LEAST_EMPTY
  }

  /** The best set. */
  public record Result(
      @Described(value = "How many tins are taken", headline = true) int tins,
      @Described(value = "Batter to share out", unit = "ml") double batterMillilitres,
      @Described(value = "Room in the tins up to their part", unit = "ml") double roomMillilitres,
      @Described(value = "Room that stays empty", unit = "ml") double emptyMillilitres,
      @Described(value = "The tins", table = true) List<Chosen> chosen,
      @Described("Whether the depth that was asked for is kept") @Nullable Boolean keepsDepth,
      @Described("Whether every way to take the tins was weighed; else the best that was found")
          boolean exact) {}

  /** So many of one kind. */
  public record Chosen(
      @Described("Id of the pan, or its shape") String pan,
      @Described("Place in the shelf's list, from 0") int shelf,
      @Described("How many are taken") int count,
      @Described(value = "One of them, to the rim", unit = "ml") double millilitres,
      @Described(value = "Batter in one of them", unit = "ml") double batterMillilitres,
      @Described(value = "Batter in one of them", unit = "g") @Nullable Double grams,
      @Described(value = "Part that is filled", unit = "1") double fillPart,
      @Described(value = "How high the batter stands", unit = "cm") @Nullable Double depthCm) {}

  @Override
  public String name() {
    return "tin-choice";
  }

  @Override
  public String title() {
    return "The best tins on the shelf for a batch: fewest tins, least empty, depth kept";
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
        new Input(
            Volume.ofMillilitres(3200),
            null,
            null,
            null,
            null,
            List.of(
                count("round-20x5-cm", 4),
                count("round-23x5-cm", 2),
                count("rectangle-33x23x5-cm", 1)),
            null,
            "butter-cake",
            null,
            null),
        new Input(
            null,
            Mass.ofGrams(1500),
            null,
            null,
            Density.parse("0.85 g/ml"),
            List.of(count("round-18x5-cm", 2), count("loaf-25x11x7-cm", 2)),
            Fraction.parse("0.6"),
            null,
            Length.ofCentimetres(3),
            Prefer.LEAST_EMPTY));
  }

  private static PanCount count(String id, int number) {
    return new PanCount(PanRef.parse(id), number, null, null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Fill fill = Fill.of(input.fill(), input.batter());
    Shelved batter = Shelved.of(input, fill, kitchen, notes);
    List<Tin> tins = new ArrayList<>();
    for (PanCount pan : input.shelf()) {
      tins.add(Tin.of(pan, tins.size(), fill));
    }
    TinSearch.Found found = search(input, tins, batter.millilitres(), notes);
    return Answer.of(result(input, tins, batter, found, fill, notes), notes);
  }

  private static TinSearch.Found search(
      Input input, List<Tin> tins, double millilitres, Notes notes) {
    boolean fewest = input.prefer() != Prefer.LEAST_EMPTY;
    double room = tins.stream().mapToDouble(tin -> tin.room() * tin.available()).sum();
    if (room * (1 + TinSearch.HAIR) < millilitres) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          "/shelf",
          String.format(
              Locale.ROOT,
              "all pans on the shelf take %.0f ml at this fill; the batter is %.0f ml",
              room,
              millilitres));
    }
    if (input.depth() != null) {
      double wanted = input.depth().centimetres();
      List<TinSearch.Kind> kinds = tins.stream().map(tin -> tin.kind(wanted)).toList();
      TinSearch.@Nullable Found kept = new TinSearch(kinds, millilitres, fewest).best();
      if (kept != null) {
        return kept.keepingDepth();
      }
      notes.remark(
          "depth-not-kept",
          "/depth",
          String.format(
              Locale.ROOT,
              "no set of these tins keeps the batter within %.2f cm of %.1f cm; the best without"
                  + " it is given",
              DepthRule.mostCm(),
              wanted));
    }
    List<TinSearch.Kind> kinds = tins.stream().map(tin -> tin.kind(null)).toList();
    TinSearch.@Nullable Found any = new TinSearch(kinds, millilitres, fewest).best();
    if (any == null) {
      throw Refusal.of(FaultCode.IMPOSSIBLE, "/shelf", "no set of these tins takes the batter");
    }
    return any;
  }

  private static Result result(
      Input input, List<Tin> tins, Shelved batter, TinSearch.Found found, Fill fill, Notes notes) {
    double room = 0;
    int count = 0;
    for (Tin tin : tins) {
      room += tin.room() * found.counts()[tin.place()];
      count += found.counts()[tin.place()];
    }
    double share = Math.min(1, batter.millilitres() / room);
    List<Chosen> chosen = new ArrayList<>();
    for (Tin tin : tins) {
      if (found.counts()[tin.place()] > 0) {
        Pans.standard()
            .millilitres(
                tin.pan(),
                notes,
                "/shelf/" + tin.place() + "/pan",
                "/chosen/" + chosen.size() + "/millilitres");
        fill.cite(notes, "/batter", "/chosen/" + chosen.size() + "/fillPart");
        chosen.add(tin.chosen(found.counts()[tin.place()], share, batter.gramsPerMillilitre()));
        tin.judge(share, fill, notes);
      }
    }
    if (!found.exact()) {
      notes.remark(
          "search-cut-short",
          "/shelf",
          "there are more ways to take these tins than are weighed; the best found is given");
    }
    if (input.depth() != null) {
      DepthRule.cite(notes, "/keepsDepth");
    }
    return new Result(
        count,
        batter.millilitres(),
        room,
        Math.max(0, room - batter.millilitres()),
        chosen,
        input.depth() == null ? null : found.keepsDepth(),
        found.exact());
  }
}
