package tamis.engine.table;

import java.util.AbstractMap;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * The filled cells of one row by column. All rows of a table share the places of the columns: a map
 * for each of six thousand rows took most of the time of a start.
 */
final class Cells extends AbstractMap<String, String> {
  private final Map<String, Integer> places;
  private final @Nullable String[] fields;

  /**
   * @param places of the columns, in their order
   * @param fields as many as columns; blank ones count as empty
   */
  Cells(Map<String, Integer> places, List<String> fields) {
    this.places = places;
    this.fields = new String[fields.size()];
    for (int i = 0; i < this.fields.length; i++) {
      String field = fields.get(i).strip();
      this.fields[i] = field.isEmpty() ? null : field;
    }
  }

  @Override
  public @Nullable String get(@Nullable Object column) {
    @Nullable Integer place = places.get(column);
    return place == null ? null : fields[place];
  }

  @Override
  public boolean containsKey(@Nullable Object column) {
    return get(column) != null;
  }

  @Override
  public Set<Map.Entry<String, String>> entrySet() {
    Map<String, String> filled = new LinkedHashMap<>();
    places.forEach(
        (column, place) -> {
          @Nullable String field = fields[place];
          if (field != null) {
            filled.put(column, field);
          }
        });
    return Collections.unmodifiableMap(filled).entrySet();
  }
}
