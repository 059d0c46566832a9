package tamis.engine.note;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A fact that an answer rests on.
 *
 * @param table name of the table, or {@code ingredients} for a shop's own document
 * @param row the row's key
 * @param source key of the source, or the document's own words
 * @param locator page, table or record within the source
 * @param basis measured, regulation, standard, handbook, common practice or memory
 * @param pointers parts of the result that rest on it (JSON Pointers)
 */
public record Cited(
    String table,
    String row,
    String source,
    @Nullable String locator,
    @Nullable String basis,
    List<String> pointers) {
  public Cited {
    pointers = List.copyOf(pointers);
  }
}
