package tamis.api.collection;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.security.DigestOutputStream;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HashMap;
import java.util.HashSet;
import java.util.HexFormat;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;

/**
 * The folder that formulas are written into. It keeps what was written in each file, so that a file
 * that somebody changed since is left alone, and one that was not is written again; and of which
 * recipe, so that a recipe keeps its file when others come or go.
 */
final class OutFolder implements AutoCloseable {
  private static final String MARKS = ".intake";

  private final Path folder;
  private final Marks marks;
  private final Predicate<String> isRead;
  private final Set<Path> sources;
  private final Set<String> taken = new HashSet<>();
  private final Map<String, Integer> numbers = new HashMap<>();
  private final Map<String, String> kept = new TreeMap<>();
  private int written;

  private OutFolder(Path folder, Marks marks, Predicate<String> isRead, Set<Path> sources) {
    this.folder = folder;
    this.marks = marks;
    this.isRead = isRead;
    this.sources = sources;
  }

  /**
   * @param isRead whether the file of a recipe is read in this run
   * @param sources files of this run, which may lie in the folder and are never written over
   */
  static OutFolder at(Path folder, Predicate<String> isRead, Set<Path> sources) throws IOException {
    Files.createDirectories(folder);
    return new OutFolder(folder, Marks.at(folder.resolve(MARKS)), isRead, sources);
  }

  /**
   * Takes an id for a recipe: the one that it had, or words with a number behind them that no other
   * recipe of this run has or had.
   */
  String take(String words, String ending, String origin) {
    @Nullable String before = marks.nameOf(origin);
    if (before != null && isOf(before, words, ending) && taken.add(before)) {
      return before.substring(0, before.length() - ending.length());
    }
    for (int number = numbers.getOrDefault(words, 1); ; number++) {
      String id = number == 1 ? words : words + "-" + number;
      String owner = marks.originOf(id + ending);
      boolean anothers = !owner.isEmpty() && !owner.equals(origin) && isRead.test(owner);
      if (!anothers && !isSource(id + ending) && taken.add(id + ending)) {
        numbers.put(words, number + 1);
        return id;
      }
    }
  }

  private boolean isSource(String name) {
    var path = folder.resolve(name).toAbsolutePath().normalize();
    return sources.contains(path) && !marks.isKnown(name);
  }

  private static boolean isOf(String name, String words, String ending) {
    if (!name.startsWith(words) || !name.endsWith(ending)) {
      return false;
    }
    String number = name.substring(words.length(), name.length() - ending.length());
    return number.isEmpty() || number.matches("-\\d+");
  }

  /** Whether a file was written here: in the folder that is read, it is no recipe of its own. */
  boolean holds(Path file) {
    var path = file.toAbsolutePath().normalize();
    boolean here = folder.toAbsolutePath().normalize().equals(path.getParent());
    return here && marks.isKnown(String.valueOf(path.getFileName()));
  }

  /** Writes a file, unless somebody changed it since it was written. */
  void write(String name, byte[] bytes, String origin) throws IOException {
    var path = folder.resolve(name);
    String fresh = HexFormat.of().formatHex(digest().digest(bytes));
    if (isFree(name, fresh)) {
      marks.add(name, fresh, origin);
      replace(path, bytes);
      written++;
    }
  }

  /** A file that is written piece by piece, and takes its place when it is closed. */
  Growing growing(String name) throws IOException {
    return new Growing(name);
  }

  /** A file that is not whole yet. */
  final class Growing implements AutoCloseable {
    private final String name;
    private final Path fresh;
    private final MessageDigest digest = digest();
    private final OutputStream out;

    private Growing(String name) throws IOException {
      this.name = name;
      this.fresh = folder.resolve(name + ".new");
      this.out =
          new DigestOutputStream(new BufferedOutputStream(Files.newOutputStream(fresh)), digest);
    }

    void add(byte[] line) throws IOException {
      out.write(line);
      out.write('\n');
    }

    /** Puts it in its place. */
    void whole() throws IOException {
      out.close();
      String mark = HexFormat.of().formatHex(digest.digest());
      if (isFree(name, mark)) {
        marks.add(name, mark, "");
        move(fresh, folder.resolve(name));
        written++;
      } else {
        Files.delete(fresh);
      }
    }

    @Override
    public void close() throws IOException {
      out.close();
    }
  }

  private boolean isFree(String name, String fresh) throws IOException {
    var path = folder.resolve(name);
    if (!Files.exists(path)) {
      return true;
    }
    String there = fingerprint(path);
    if (there.equals(fresh) || marks.isOurs(name, there)) {
      return true;
    }
    kept.put(name, "was changed since it was written, and is left as it is");
    return false;
  }

  /** Names of files that were left as they are, with the reason. */
  Map<String, String> kept() {
    return kept;
  }

  int written() {
    return written;
  }

  /** Puts a whole file in the place of another: who reads it never sees half of it. */
  static void replace(Path path, byte[] bytes) throws IOException {
    var fresh = path.resolveSibling(path.getFileName() + ".new");
    Files.write(fresh, bytes);
    move(fresh, path);
  }

  private static void move(Path fresh, Path path) throws IOException {
    Files.move(fresh, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
  }

  private static String fingerprint(Path file) throws IOException {
    var digest = digest();
    try (var out = new DigestOutputStream(OutputStream.nullOutputStream(), digest)) {
      Files.copy(file, out);
    }
    return HexFormat.of().formatHex(digest.digest());
  }

  private static MessageDigest digest() {
    try {
      return MessageDigest.getInstance("SHA-256");
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException(impossible);
    }
  }

  @Override
  public void close() throws IOException {
    marks.close();
  }
}
