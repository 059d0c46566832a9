package tamis.plugin.dough;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;

/** What should be known beside a table of percentages, and the rows that its masses rest on. */
final class PercentRemarks {
  private final Notes notes;

  PercentRemarks(Notes notes) {
    this.notes = notes;
  }

  void on(Batch batch, Overall overall, Water water) {
    batch.remarks().forEach(notes::add);
    batch.sources().forEach(source -> cite(source, batch.lines(), overall));
    if (!overall.asNeeded().isEmpty()) {
      notes.remark(
          "as-needed",
          "/formula",
          names(overall.asNeeded()) + ": taken as needed, outside of mass and percent");
    }
    for (Batch.Part part : overall.apart()) {
      if (part.flour() > 0) {
        notes.remark(
            "part-apart",
            "/formula" + part.path(),
            "`"
                + part.formula().name()
                + "` is a part of its own, so its flour and water are not counted; a preferment, soaker or scald says so in `role`");
      }
    }
    if (overall.joined().stream().anyMatch(line -> !line.grams().isExact())) {
      notes.estimate(
          "measured-by-volume",
          "/formula",
          "some lines are measured by volume or count; their percentages are as sure as the densities");
    }
    on(water);
  }

  private void on(Water water) {
    if (!water.unknown().isEmpty()) {
      notes.remark(
          "unknown-water",
          "/formula",
          "the composition does not tell the water of "
              + String.join(", ", water.unknown())
              + "; the total water is without it");
    }
    if (water.lines() == 0 && water.total() > 0) {
      notes.remark(
          "no-water-line",
          "/formula",
          "there is no line of water, so the hydration is 0; all the water comes with other ingredients, see `totalWaterPercent`");
    }
    if (water.boiledOff()) {
      notes.remark(
          "water-not-remaining",
          "/formula",
          "some of the water does not stay; `lines` tell what is weighed, the hydration what stays");
    }
  }

  private void cite(Cited source, List<BatchLine> lines, Overall overall) {
    for (String pointer : source.pointers()) {
      @Nullable Integer place = place(pointer, lines, overall);
      if (place != null) {
        notes.cite(
            source.table(),
            source.row(),
            source.source(),
            source.locator(),
            source.basis(),
            "/lines/" + place + "/grams");
      } else if (!pointer.startsWith("/lines/")) {
        notes.cite(
            source.table(),
            source.row(),
            source.source(),
            source.locator(),
            source.basis(),
            "/totalGrams");
      }
    }
  }

  /** The batch points to its own lines; the table has each ingredient once. */
  private static @Nullable Integer place(String pointer, List<BatchLine> lines, Overall overall) {
    String[] names = pointer.split("/", -1);
    return names.length > 2 && names[1].equals("lines")
        ? overall.place(lines.get(Integer.parseInt(names[2])))
        : null;
  }

  private static String names(List<BatchLine> lines) {
    return lines.stream()
        .map(line -> line.ingredient().id())
        .distinct()
        .collect(Collectors.joining(", "));
  }
}
