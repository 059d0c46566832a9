package tamis.plugin.scaling;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.note.Notes;
import tamis.engine.quantity.ScaleStep;
import tamis.engine.quantity.Shown;
import tamis.engine.quantity.Spread;

/** Writes the lines of a batch as they are weighed. */
final class Lines {
  private static final double USUAL_DEVIATION = 2;
  private static final double SENSITIVE_DEVIATION = 5;
  private static final double NO_DEVIATION = 1e-9;

  private final FormulaRef formula;
  private final Rounding rounding;
  private final @Nullable Shown units;
  private final @Nullable AltitudeChange altitude;
  private final Notes notes;

  Lines(
      FormulaRef formula,
      Rounding rounding,
      @Nullable Shown units,
      @Nullable AltitudeChange altitude,
      Notes notes) {
    this.formula = formula;
    this.rounding = rounding;
    this.units = units;
    this.altitude = altitude;
    this.notes = notes;
  }

  List<ScaledLine> of(Batch batch) {
    List<ScaledLine> lines = new ArrayList<>();
    for (BatchLine line : batch.lines()) {
      lines.add(line(line, "/lines/" + lines.size() + "/grams"));
    }
    return lines;
  }

  static double rounded(double grams, Rounding rounding) {
    double step = rounding.step() == null ? ScaleStep.usual(grams) : rounding.step().grams();
    return ScaleStep.round(grams, step);
  }

  private ScaledLine line(BatchLine line, String pointer) {
    @Nullable Double change =
        altitude == null ? null : altitude.percent(line.ingredient(), pointer);
    Spread grams = line.grams();
    double rounded = rounded(grams.typical(), rounding);
    double deviation = deviation(rounded, grams.typical());
    remark(line, deviation);
    return new ScaledLine(
        line.path(),
        line.ingredient().id(),
        line.ingredient().title("en"),
        line.line().stage(),
        line.line().state(),
        grams.typical(),
        grams.low(),
        grams.high(),
        rounded,
        deviation,
        line.isAsNeeded() ? Scaling.AS_NEEDED : Scaling.shown(grams.typical(), units),
        Counted.of(line.quantity()),
        line.remains() == 1 ? null : line.remains(),
        change,
        line.isAsNeeded() ? true : null);
  }

  /** What rounding changes, in percent; what is only the last bit of a double is none. */
  private static double deviation(double rounded, double grams) {
    double percent = grams == 0 ? 0 : (rounded / grams - 1) * 100;
    return Math.abs(percent) < NO_DEVIATION ? 0 : percent;
  }

  private void remark(BatchLine line, double deviation) {
    double allowed = line.ingredient().isSensitive() ? SENSITIVE_DEVIATION : USUAL_DEVIATION;
    if (Math.abs(deviation) > allowed) {
      notes.remark(
          "rounding-deviation",
          place(line.path()),
          String.format(
              Locale.ROOT,
              "rounded to the scale's step, `%s` is %.1f %% off; weigh finer or make more",
              line.ingredient().id(),
              deviation));
    }
  }

  /** Where the line stands in the input: in a stored formula, where that is named. */
  private String place(String path) {
    StringBuilder place = new StringBuilder("/formula");
    @Nullable Formula here = formula.object();
    for (String index : path.substring("/lines/".length()).split("/lines/")) {
      if (here == null) {
        return place.toString();
      }
      place.append("/lines/").append(index);
      @Nullable FormulaRef inner = here.lines().get(Integer.parseInt(index)).formula();
      place.append(inner == null ? "" : "/formula");
      here = inner == null ? null : inner.object();
    }
    return place.toString();
  }
}
