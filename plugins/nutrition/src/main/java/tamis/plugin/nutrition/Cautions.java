package tamis.plugin.nutrition;

import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/** What every answer says about itself: that it is an estimate, and who decides. */
final class Cautions {
  static final Table TABLE =
      AllergenRules.read("cautions", "Cautions that stand beside answers", "calculation", "code");

  private Cautions() {}

  static void of(String calculation, Notes notes) {
    for (Row row : TABLE.rows()) {
      if (row.text("calculation").equals(calculation)) {
        notes.caution(row.text("code"), "", row.text("text"));
      }
    }
  }
}
