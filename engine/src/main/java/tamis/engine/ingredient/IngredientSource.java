package tamis.engine.ingredient;

import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/** Names what the mass of an ingredient rests on: a built-in row, or a document of the shop. */
final class IngredientSource {
  private IngredientSource() {}

  static void cite(StateDensity row, Ingredient ingredient, String cited, Notes notes) {
    String measure = row.measure() == null ? "" : row.measure();
    String key = ingredient.id() + "/" + row.state() + "/" + measure;
    cite(IngredientTables.DENSITIES.row(key), ingredient, row.source(), cited, notes);
  }

  static void cite(PieceMass row, Ingredient ingredient, String cited, Notes notes) {
    String state = row.state() == null ? "" : row.state();
    String key = ingredient.id() + "/" + row.piece() + "/" + state;
    cite(IngredientTables.PIECES.row(key), ingredient, row.source(), cited, notes);
  }

  /** Cites the built-in row, or the shop's own document where it says something else. */
  private static void cite(
      @Nullable Row built, Ingredient ingredient, String source, String cited, Notes notes) {
    if (built != null && isOf(built, source)) {
      notes.cite(built, cited);
      return;
    }
    notes.cite("ingredients", ingredient.id(), source, null, null, cited);
  }

  /** Whether a document names the source and place of a row, as one that was made of it does. */
  private static boolean isOf(Row row, String source) {
    String locator = row.text("locator");
    int comma = row.source().length();
    return source.length() == comma + ", ".length() + locator.length()
        && source.startsWith(row.source())
        && source.startsWith(", ", comma)
        && source.endsWith(locator);
  }

  static void cite(Ingredient ingredient, String field, String cited, Notes notes) {
    String source =
        ingredient.source() == null ? "the ingredient's own document" : ingredient.source();
    notes.cite("ingredients", ingredient.id() + "/" + field, source, null, null, cited);
  }
}
