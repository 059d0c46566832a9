package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/** What regimes ask of a list of ingredients. */
final class LabelRules {
  static final Table TABLE =
      AllergenRules.read("label-rules", "Rules for lists of ingredients", "regime", "rule");

  private LabelRules() {}

  /** The rule, or null if the regime has none. */
  static @Nullable Row rule(LabelRegime regime, String rule) {
    return TABLE.row(regime + "/" + rule);
  }

  static void cite(LabelRegime regime, String rule, Notes notes, String pointer) {
    @Nullable Row row = rule(regime, rule);
    if (row != null) {
      notes.cite(row, pointer);
    }
  }
}
