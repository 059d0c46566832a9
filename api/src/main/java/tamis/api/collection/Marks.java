package tamis.api.collection;

import java.io.BufferedWriter;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What was written into a folder: of each file the fingerprint and the recipe that it was made of,
 * a line each. A line is added before its file is written, so that a run that was broken off knows
 * its own files; the last line of a file counts, and the one before it while it may still be there.
 */
final class Marks implements AutoCloseable {
  private static final Pattern LINE = Pattern.compile("([0-9a-f]{64}) (\\S+)(?: (.+))?");

  private final Path path;
  private final Map<String, Mark> marks = new TreeMap<>();
  private final Map<String, String> names = new HashMap<>();
  private @Nullable BufferedWriter more;

  /**
   * @param before of the content that the file had before; null if there was none
   * @param origin the recipe it was made of; empty if it was of several
   */
  private record Mark(String now, @Nullable String before, String origin) {}

  private Marks(Path path) {
    this.path = path;
  }

  /** Lines that are none, such as one that was broken off, are passed over. */
  static Marks at(Path path) throws IOException {
    var marks = new Marks(path);
    if (Files.exists(path)) {
      try (var lines = Files.lines(path)) {
        lines
            .map(LINE::matcher)
            .filter(line -> line.matches())
            .forEach(
                line -> {
                  String origin = line.group(3);
                  marks.put(line.group(2), line.group(1), origin == null ? "" : origin);
                });
      }
    }
    return marks;
  }

  private void put(String name, String now, String origin) {
    var known = marks.get(name);
    boolean same = known != null && known.now().equals(now);
    @Nullable String before = known == null ? null : same ? known.before() : known.now();
    marks.put(name, new Mark(now, before, origin));
    names.put(origin, name);
  }

  /** Whether a content is what was written into a file, or was to be. */
  boolean isOurs(String name, String fingerprint) {
    var mark = marks.get(name);
    return mark != null && (mark.now().equals(fingerprint) || fingerprint.equals(mark.before()));
  }

  /** Whether a file was written, or was to be. */
  boolean isKnown(String name) {
    return marks.containsKey(name);
  }

  /** The file that was made of a recipe before, or null. */
  @Nullable String nameOf(String origin) {
    return names.get(origin);
  }

  /** The recipe that a file was made of; empty if that is not known. */
  String originOf(String name) {
    var mark = marks.get(name);
    return mark == null ? "" : mark.origin();
  }

  void add(String name, String fingerprint, String origin) throws IOException {
    if (more == null) {
      rewrite();
      more =
          Files.newBufferedWriter(
              path, StandardCharsets.UTF_8, StandardOpenOption.CREATE, StandardOpenOption.APPEND);
    }
    put(name, fingerprint, origin);
    more.write((fingerprint + " " + name + " " + origin).strip());
    more.newLine();
    more.flush();
  }

  /** Each file once; so a broken line at the end does not run into the next. */
  private void rewrite() throws IOException {
    var text = new StringBuilder();
    marks.forEach(
        (name, mark) -> {
          if (mark.before() != null) {
            text.append((mark.before() + " " + name + " " + mark.origin()).strip()).append('\n');
          }
          text.append((mark.now() + " " + name + " " + mark.origin()).strip()).append('\n');
        });
    if (!marks.isEmpty()) {
      OutFolder.replace(path, text.toString().getBytes(StandardCharsets.UTF_8));
    }
  }

  @Override
  public void close() throws IOException {
    if (more != null) {
      more.close();
      more = null;
    }
  }
}
