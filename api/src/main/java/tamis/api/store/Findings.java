package tamis.api.store;

import java.util.Collection;
import java.util.LinkedHashSet;
import java.util.Set;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * The index of words, names and uses. Words stand for the newest revision only. Names and used
 * formulas stay once they were there, since an older revision may be asked for; who looks them up
 * checks them against the document.
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

  /** All words between spaces, so that each is found by its beginning. */
  static String joined(@Nullable Document document) {
    return document == null ? "" : " " + String.join(" ", document.words());
  }

  /** Makes the index say what the newest revision says. */
  static void update(
      Handle handle, Kind kind, String id, @Nullable Document before, @Nullable Document after) {
    Set<String> old = terms(before);
    Set<String> terms = terms(after);
    var gone = new LinkedHashSet<>(old);
    gone.removeIf(term -> !term.startsWith(WORD) || terms.contains(term));
    var added = new LinkedHashSet<>(terms);
    added.removeAll(old);
    run(handle, "DELETE FROM finding WHERE kind = ? AND term = ? AND id = ?", kind, id, gone);
    run(handle, "INSERT INTO finding VALUES (?, ?, ?) ON CONFLICT DO NOTHING", kind, id, added);
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

  private static Set<String> terms(@Nullable Document document) {
    var terms = new LinkedHashSet<String>();
    if (document != null) {
      document.words().forEach(word -> terms.add(word(word)));
      Terms.names(document.record()).forEach(name -> terms.add(name(name)));
      document.uses().forEach(formula -> terms.add(use(formula)));
    }
    return terms;
  }
}
