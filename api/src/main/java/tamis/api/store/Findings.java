package tamis.api.store;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * The index of words, names and uses. Words stand for the newest revision only, and may wait in
 * {@code unfiled} for a while. Names and used formulas are there at once and stay, since an older
 * revision may be asked for; who looks them up checks them against the document.
 */
final class Findings {
  private static final String WORD = "w:";
  private static final String NAME = "n:";
  private static final String USE = "u:";

  private Findings() {}

  static String word(String word) {
    return WORD + word;
  }

  static String name(String folded) {
    return NAME + storable(folded);
  }

  static String use(String formula) {
    return USE + formula;
  }

  /** PostgreSQL keeps no zero character. */
  static String storable(String text) {
    return text.replace('\0', ' ');
  }

  /** All words, each after a space, so that each is found by its beginning. */
  static String joined(Collection<String> words) {
    return words.isEmpty() ? "" : " " + String.join(" ", words);
  }

  /** What {@link #joined} joined. */
  static List<String> words(String joined) {
    return joined.isEmpty() ? List.of() : List.of(joined.substring(1).split(" ", -1));
  }

  /** Words that are no more. */
  static String gone(Set<String> old, Set<String> now) {
    var gone = new LinkedHashSet<>(old);
    gone.removeAll(now);
    return joined(gone);
  }

  /** Names and uses. */
  static Set<String> lasting(Document document) {
    var terms = new LinkedHashSet<String>();
    Terms.names(document.record()).forEach(name -> terms.add(name(name)));
    document.uses().forEach(formula -> terms.add(use(formula)));
    return terms;
  }

  /** Says of a document what its newest revision says, all at once. */
  static void update(
      Handle handle, Kind kind, String id, @Nullable Document before, @Nullable Document after) {
    Set<String> old = before == null ? Set.of() : before.words();
    Set<String> words = after == null ? Set.of() : after.words();
    var gone = new LinkedHashSet<>(old);
    gone.removeAll(words);
    var added = new LinkedHashSet<>(words);
    added.removeAll(old);
    remove(handle, kind, id, gone);
    add(handle, kind, id, added.stream().map(Findings::word).toList());
    if (after != null) {
      add(handle, kind, id, lasting(after));
    }
  }

  /** Takes words out of the index. */
  static void remove(Handle handle, Kind kind, String id, Collection<String> words) {
    String out = "DELETE FROM finding WHERE kind = ? AND term = ? AND id = ?";
    run(handle, out, kind, id, words.stream().map(Findings::word).toList());
  }

  private static void add(Handle handle, Kind kind, String id, Collection<String> terms) {
    String in = "INSERT INTO finding (kind, term, id) VALUES (?, ?, ?) ON CONFLICT DO NOTHING";
    run(handle, in, kind, id, terms);
  }

  private static void run(
      Handle handle, String sql, Kind kind, String id, Collection<String> terms) {
    if (terms.isEmpty()) {
      return;
    }
    try (var batch = handle.prepareBatch(sql)) {
      for (String term : terms) {
        batch.bind(0, kind.word()).bind(1, term).bind(2, id).add();
      }
      batch.execute();
    }
  }
}
