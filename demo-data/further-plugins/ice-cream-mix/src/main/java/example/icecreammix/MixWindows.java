package example.icecreammix;

import java.util.Locale;
import java.util.Map;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/** What is usual in a frozen mix, and what a mix outside of it will be like. */
final class MixWindows {
  private static final Map<String, String> PLACES =
      Map.of(
          "total-solids", "/totalSolidsPercent",
          "fat", "/fatPercent",
          "sweetener", "/sweetenerPercent",
          "milk-solids-not-fat", "/milkSolidsNotFatPercent");

  private MixWindows() {}

  static void compare(
      IceCreamMix.Style style, Map<String, Double> measured, String whole, Notes notes) {
    measured.forEach(
        (measure, percent) -> {
          Row row = MixTables.WINDOWS.row(style.key() + "/" + measure);
          double low = row.number("low");
          double high = row.number("high");
          notes.cite(row, PLACES.get(measure));
          if (percent < low || percent > high) {
            notes.remark(
                measure + (percent < low ? "-low" : "-high"),
                whole,
                String.format(
                    Locale.ROOT,
                    "%s %.1f %%, usual in %s are %s to %s %%: %s",
                    measure.replace('-', ' '),
                    percent,
                    style.key().replace('-', ' '),
                    row.text("low"),
                    row.text("high"),
                    row.text(percent < low ? "below" : "above")));
          }
        });
  }
}
