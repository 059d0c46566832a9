package tamis.engine.note;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

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
    @Described(value = "Name of the table", example = "densities") String table,
    @Described(value = "Key of the row", example = "all-purpose-flour/as-measured") String row,
    @Described(value = "Key of the source", example = "usda-sr") String source,
    @Described("Page, table or record within the source") @Nullable String locator,
    @Described(value = "How the fact was found", example = "measured") @Nullable String basis,
    @Described("Parts of the result that rest on it (JSON Pointers)") List<String> pointers) {
  public Cited {
    pointers = List.copyOf(pointers);
  }
}
