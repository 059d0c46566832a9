package tamis.api.store;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A page of a list, by id.
 *
 * @param rows newest revisions of the documents of this page
 * @param next where the next page begins, or null if there is none
 */
public record Listed(List<Stored> rows, @Nullable String next) {
  public Listed {
    rows = List.copyOf(rows);
  }
}
