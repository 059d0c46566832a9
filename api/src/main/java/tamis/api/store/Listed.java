package tamis.api.store;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A page of a list, by id.
 *
 * @param rows the documents of this page
 * @param next where the next page begins, or null if there is none
 */
public record Listed(List<Row> rows, @Nullable String next) {
  public Listed {
    rows = List.copyOf(rows);
  }

  /**
   * A document as it stands in a list.
   *
   * @param number of its newest revision
   */
  public record Row(String id, String title, int number) {}

  /** A page of the first {@code limit} of rows, one more of which says that there is a next one. */
  static Listed of(List<Row> rows, int limit) {
    return rows.size() <= limit
        ? new Listed(rows, null)
        : new Listed(rows.subList(0, limit), rows.get(limit - 1).id());
  }
}
