package tamis.api.store;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.api.store.DumpLine.Counts;
import tamis.api.store.DumpLine.Unreadable;
import tamis.api.version.Versions;

/** Fills a store from a dump: all of it, or nothing if a line cannot be kept. */
public final class Load {
  private static final int MOST_TOLD = 20;

  private static final String HEAD =
      "INSERT INTO head (kind, id, title, words) VALUES (?, ?, ?, ?) ON CONFLICT (kind, id)"
          + " DO UPDATE SET title = excluded.title, words = excluded.words";

  private final Handle handle;
  private final InputStream in;
  private final List<String> wrong = new ArrayList<>();
  private @Nullable Kind lastKind;
  private @Nullable Stored last;
  private @Nullable Stored newest;
  private long lines;

  /** Lines that cannot be kept; nothing was. */
  public static final class Rejected extends RuntimeException {
    private static final long serialVersionUID = 1L;

    @SuppressWarnings("serial") // never serialised: it ends a command
    private final List<String> reasons;

    Rejected(List<String> reasons) {
      super(String.join("; ", reasons), null, false, false);
      this.reasons = List.copyOf(reasons);
    }

    /** A line each. */
    public List<String> reasons() {
      return reasons;
    }
  }

  private Load(Handle handle, InputStream in) {
    this.handle = handle;
    this.in = in;
  }

  /**
   * @param replace whether what is there is taken away first
   * @throws UnusableStore if the store holds anything and may not be replaced, or the dump is newer
   *     than this program
   * @throws Rejected if a line cannot be kept
   */
  public static void into(SqlStore store, InputStream in, boolean replace) {
    store
        .database()
        .<@Nullable Void>write(
            handle -> {
              handle.execute("UPDATE store SET revision = revision"); // others wait from here on
              if (replace) {
                clear(handle);
              } else {
                refuseFilled(handle);
              }
              new Load(handle, in).all();
              return null;
            });
    store.loaded();
  }

  private static void clear(Handle handle) {
    for (String table : List.of("document", "head", "finding", "unfiled", "observation")) {
      handle.execute("DELETE FROM " + table);
    }
  }

  private static void refuseFilled(Handle handle) {
    if (isFilled(handle)) {
      throw new UnusableStore("the store holds documents already: name an empty one");
    }
  }

  static boolean isFilled(Handle handle) {
    return handle
        .createQuery("SELECT kind FROM document LIMIT 1")
        .mapTo(String.class)
        .findFirst()
        .isPresent();
  }

  private void all() {
    Counts counts = counts();
    for (byte @Nullable [] line = line(); line != null; line = line()) {
      lines++;
      try {
        keep(DumpLine.of(line));
      } catch (Unreadable unreadable) {
        wrong.add(String.format(Locale.ROOT, "line %d: %s", lines + 1, unreadable.getMessage()));
        if (wrong.size() == MOST_TOLD) {
          break;
        }
      }
    }
    if (wrong.isEmpty() && lines != counts.lines()) {
      wrong.add("the first line tells of " + counts.lines() + " lines, there are " + lines);
    }
    if (!wrong.isEmpty()) {
      throw new Rejected(wrong);
    }
    handle.execute(
        "UPDATE store SET revision = ?, trials = ?, written = ?",
        counts.revision(),
        counts.trials(),
        newest == null ? null : newest.written().toString());
  }

  private Counts counts() {
    byte @Nullable [] first = line();
    try {
      Counts counts = first == null ? null : DumpLine.of(first).counts();
      if (counts == null) {
        throw new UnusableStore("the file is empty: no dump of a store");
      }
      if (counts.schema() > Versions.ofThisBuild().store()) {
        throw new UnusableStore(
            "the dump has schema " + counts.schema() + ": use the newer Tamis that wrote it");
      }
      return counts;
    } catch (Unreadable unreadable) {
      throw new UnusableStore("the file is no dump of a store: " + unreadable.getMessage());
    }
  }

  private void keep(DumpLine line) {
    if (line.kind().equals(Dump.OBSERVATION)) {
      SqlWrites.observation(handle, line.trial(), line.number(), line.observed(), line.document());
      return;
    }
    Kind kind = kind(line.kind());
    Stored stored = line.revision(kind);
    @Nullable Stored before = before(kind, stored.id());
    int expected = before == null ? 1 : before.number() + 1;
    if (stored.number() != expected) {
      throw new Unreadable(
          kind.word()
              + " `"
              + stored.id()
              + "` comes with revision "
              + stored.number()
              + " where "
              + expected
              + " is next");
    }
    SqlWrites.row(handle, kind, stored);
    head(kind, stored);
    Findings.update(
        handle, kind, stored.id(), before == null ? null : before.document(), stored.document());
    lastKind = kind;
    last = stored;
    if (!kind.hasOwnCount() && (newest == null || newest.revision() < stored.revision())) {
      newest = stored;
    }
  }

  private @Nullable Stored before(Kind kind, String id) {
    return last != null && lastKind == kind && last.id().equals(id) ? last : null;
  }

  private void head(Kind kind, Stored stored) {
    @Nullable Document document = stored.document();
    if (document == null) {
      handle.execute("DELETE FROM head WHERE kind = ? AND id = ?", kind.word(), stored.id());
    } else {
      handle.execute(
          HEAD,
          kind.word(),
          stored.id(),
          Findings.storable(document.title()),
          Findings.joined(document.words()));
    }
  }

  private static Kind kind(String word) {
    for (Kind kind : Kind.values()) {
      if (kind.word().equals(word)) {
        return kind;
      }
    }
    throw new Unreadable("`" + word + "` is no kind of document");
  }

  /** The next line without its end, or null at the end. */
  private byte @Nullable [] line() {
    var line = new ByteArrayOutputStream();
    try {
      int next = in.read();
      if (next < 0) {
        return null;
      }
      for (; next >= 0 && next != '\n'; next = in.read()) {
        line.write(next);
      }
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
    return line.toByteArray();
  }
}
