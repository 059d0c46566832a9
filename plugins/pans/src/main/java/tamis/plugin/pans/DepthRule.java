package tamis.plugin.pans;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** How far depths may differ, and what a baker should then expect. */
final class DepthRule {
  static final Table TABLE =
      TableReader.read(
          DepthRule.class,
          "/tamis/plugin/pans/depth-rules.csv",
          "How far the depth may differ in another pan",
          List.of("rule"));
  private static final Row ROW = Objects.requireNonNull(TABLE.row("pan-depth"));

  /** Less than this part more or less is not worth a word. */
  private static final double NOTICED = 0.05;

  private DepthRule() {}

  static double mostCm() {
    return ROW.number("most_cm");
  }

  static boolean keeps(double differenceCm) {
    return Math.abs(differenceCm) <= mostCm() + 1e-9;
  }

  static void cite(Notes notes, String pointer) {
    notes.cite(ROW, pointer);
  }

  /** What to expect of batter that stands higher or lower than it did. */
  static void advise(double fromCm, double intoCm, Notes notes, String place) {
    double change = intoCm - fromCm;
    if (Math.abs(change) < NOTICED * fromCm) {
      return;
    }
    String stands =
        String.format(
            Locale.ROOT,
            "the batter stands %.1f cm %s (%.1f instead of %.1f cm): ",
            Math.abs(change),
            change > 0 ? "higher" : "lower",
            intoCm,
            fromCm);
    if (change > 0) {
      notes.estimate(
          "batter-deeper",
          place,
          stands
              + "it will usually take longer, and a somewhat lower oven keeps the edge from drying;"
              + " go by the cake, not the clock");
    } else {
      notes.estimate(
          "batter-shallower",
          place,
          stands + "it will usually be done sooner; begin to look early, and go by the cake");
    }
  }

  /** Says that pans differ by more than the rule allows. */
  static void outside(double differenceCm, Notes notes, String place) {
    notes.remark(
        "depth-outside-rule",
        place,
        String.format(
            Locale.ROOT,
            "this pan is %.1f cm %s; the rule for other pans keeps within %.2f cm, so time and"
                + " heat of the formula say little here",
            Math.abs(differenceCm),
            differenceCm > 0 ? "deeper" : "shallower",
            mostCm()));
  }
}
