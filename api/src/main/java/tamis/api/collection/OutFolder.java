package tamis.api.collection;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/**
 * The folder that formulas are written into. It keeps what was written in each file, so that a file
 * that somebody changed since is left alone, and one that was not is written again.
 */
final class OutFolder {
  private static final String MARKS = ".intake";

  private final Path folder;
  private final Map<String, String> marks = new TreeMap<>();
  private final Set<String> written = new HashSet<>();
  private final Set<String> reserved = new HashSet<>();
  private final Map<String, String> kept = new TreeMap<>();

  private OutFolder(Path folder) {
    this.folder = folder;
  }

  static OutFolder at(Path folder) throws IOException {
    Files.createDirectories(folder);
    var out = new OutFolder(folder);
    var marks = folder.resolve(MARKS);
    if (Files.exists(marks)) {
      for (var line : Files.readAllLines(marks)) {
        int space = line.indexOf(' ');
        if (space > 0) {
          out.marks.put(line.substring(space + 1), line.substring(0, space));
        }
      }
    }
    return out;
  }

  /** Whether a file of this name was written in this run. */
  boolean isTaken(String name) {
    return written.contains(name) || reserved.contains(name) || kept.containsKey(name);
  }

  /** Takes a name without writing it. */
  void reserve(String name) {
    reserved.add(name);
  }

  /** Writes a file, unless somebody changed it since it was written. */
  void write(String name, byte[] bytes) throws IOException {
    var path = folder.resolve(name);
    if (Files.exists(path)) {
      String there = fingerprint(Files.readAllBytes(path));
      @Nullable String ours = marks.get(name);
      if (!there.equals(ours) && !there.equals(fingerprint(bytes))) {
        kept.put(name, "was changed since it was written, and is left as it is");
        return;
      }
    }
    // The file comes first: a run that ends between the two finds what it would write again.
    written.add(name);
    replace(path, bytes);
    marks.put(name, fingerprint(bytes));
    writeMarks();
  }

  private void writeMarks() throws IOException {
    var text = new StringBuilder();
    marks.forEach((name, mark) -> text.append(mark).append(' ').append(name).append('\n'));
    replace(folder.resolve(MARKS), text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Names of files that were left as they are, with the reason. */
  Map<String, String> kept() {
    return kept;
  }

  int written() {
    return written.size();
  }

  /** Puts a whole file in the place of another: who reads it never sees half of it. */
  static void replace(Path path, byte[] bytes) throws IOException {
    var fresh = path.resolveSibling(path.getFileName() + ".new");
    Files.write(fresh, bytes);
    Files.move(fresh, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String fingerprint(byte[] bytes) {
    try {
      return HexFormat.of().formatHex(MessageDigest.getInstance("SHA-256").digest(bytes));
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
