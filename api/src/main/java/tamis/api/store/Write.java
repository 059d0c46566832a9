package tamis.api.store;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * A document that is to be kept, with all that a database must be told and must check.
 *
 * @param expected the newest revision as the writer knows it; 0 if there must be none
 * @param seen how many observations must have come to that revision, or {@link #ANY}
 * @param title null if it and the words are as before
 * @param words all of them, each after a space; null with the title
 * @param gone words that stood in the index and no longer hold, each after a space; null if the
 *     words are as before
 * @param added names and uses that begin to hold, as {@link Findings} writes them
 * @param uses formulas that must be there
 */
record Write(
    Kind kind,
    String id,
    int expected,
    int seen,
    String author,
    @Nullable String title,
    @Nullable String words,
    String body,
    @Nullable String gone,
    List<String> added,
    List<String> uses) {
  /** Whatever came is right. */
  static final int ANY = -1;

  Write {
    added = List.copyOf(added);
    uses = List.copyOf(uses);
  }

  /** The same after another revision. */
  Write after(int last) {
    return new Write(kind, id, last, seen, author, title, words, body, gone, added, uses);
  }

  boolean isReworded() {
    return gone != null;
  }

  /**
   * @param before the document of revision {@code expected}, or null if there is none
   */
  static Write of(
      Document document, @Nullable Document before, int expected, int seen, String author) {
    Set<String> uses =
        new LinkedHashSet<>(document.kind() == Kind.FORMULA ? document.uses() : Set.of());
    uses.remove(document.id());
    Set<String> words = document.words();
    Set<String> old = before == null ? Set.of() : before.words();
    boolean reworded = before == null || !words.equals(old);
    boolean retitled = before == null || reworded || !document.title().equals(before.title());
    Set<String> added = Findings.lasting(document);
    if (before != null) {
      added.removeAll(Findings.lasting(before));
    }
    return new Write(
        document.kind(),
        document.id(),
        expected,
        seen,
        author,
        retitled ? Findings.storable(document.title()) : null,
        retitled ? Findings.joined(words) : null,
        document.json(),
        reworded ? Findings.gone(old, words) : null,
        List.copyOf(added),
        List.copyOf(uses));
  }
}
