package tamis.api.store;

import java.util.ArrayList;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.Query;
import org.jspecify.annotations.Nullable;

/**
 * Lists documents by id, a page at a time, by the beginnings of words. Without words the page is
 * read off the key of {@code head}. With words, the one with the fewest entries in {@code finding}
 * leads: if they are few, the page is made of them; if they are many, so are the hits, and {@code
 * head} is read in the order of ids until the page is full. Either way the work depends on the size
 * of the page, not of the store; only common words that seldom stand together make it read on.
 */
final class Search {
  /** From here on a word counts as common. */
  private static final int MANY = 1_000;

  private static final String LAST = Character.toString(Character.MAX_CODE_POINT);

  private static final String COUNT =
      "SELECT count(*) FROM (SELECT 1 FROM finding WHERE kind = ? AND term >= ? AND term < ?"
          + " LIMIT "
          + MANY
          + ") few";

  private static final String PAGE =
      "SELECT p.id, p.title, (SELECT max(d.number) FROM document d WHERE d.kind = ? AND d.id = p.id)"
          + " FROM (SELECT h.id, h.title FROM ";

  private static final String END = " ORDER BY h.id LIMIT ?) p ORDER BY p.id";

  /** A cross join is worked through in this order by SQLite, so that few rows are looked up. */
  private static final String FEW =
      "(SELECT id FROM finding WHERE kind = ? AND term >= ? AND term < ?"
          + " UNION SELECT id FROM unfiled WHERE kind = ?) f CROSS JOIN head h"
          + " WHERE h.id = f.id AND ";

  private static final String ALL = "head h WHERE ";

  private static final String HERE = "h.kind = ?";

  private Search() {}

  static Listed list(Handle handle, Kind kind, String words, int limit, @Nullable String after) {
    var wanted = List.copyOf(Terms.split(List.of(words)));
    @Nullable String leader = null;
    int fewest = MANY;
    for (String word : wanted) {
      int count = count(handle, kind, word);
      if (count < fewest) {
        fewest = count;
        leader = word;
      }
    }
    return page(handle, kind, wanted, leader, limit, after);
  }

  private static int count(Handle handle, Kind kind, String word) {
    var query = handle.createQuery(COUNT);
    bindAll(query, begins(kind, word));
    return query.mapTo(Integer.class).one();
  }

  private static Listed page(
      Handle handle,
      Kind kind,
      List<String> wanted,
      @Nullable String leader,
      int limit,
      @Nullable String after) {
    var sql = new StringBuilder(PAGE);
    var values = new ArrayList<Object>();
    values.add(kind.word());
    if (leader != null) {
      sql.append(FEW);
      values.addAll(begins(kind, leader));
      values.add(kind.word());
    } else {
      sql.append(ALL);
    }
    sql.append(HERE);
    values.add(kind.word());
    if (after != null) {
      sql.append(" AND h.id > ?");
      values.add(after);
    }
    for (String word : wanted) {
      sql.append(" AND h.words LIKE ?"); // of the leader, too: it may be gone, or not be there
      values.add(pattern(word));
    }
    sql.append(END);
    values.add(1L + limit);
    var query = handle.createQuery(sql.toString());
    bindAll(query, values);
    var rows =
        query
            .map((row, c) -> new Listed.Row(row.getString(1), row.getString(2), row.getInt(3)))
            .list();
    return Listed.of(rows, limit);
  }

  private static List<Object> begins(Kind kind, String word) {
    return List.of(kind.word(), Findings.word(word), Findings.word(word) + LAST);
  }

  /** A word is letters and digits: no sign of a pattern. */
  private static String pattern(String word) {
    return "% " + word + "%";
  }

  private static void bindAll(Query query, List<Object> values) {
    for (int i = 0; i < values.size(); i++) {
      query.bind(i, values.get(i));
    }
  }
}
