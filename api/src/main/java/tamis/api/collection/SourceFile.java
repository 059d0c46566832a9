package tamis.api.collection;

import java.io.IOException;
import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A file of a collection.
 *
 * @param name as it is told and kept: relative to the folder that was named, or its path as it was
 *     named where two files would have one name
 */
public record SourceFile(Path path, String name) {
  private static final int MOST_BYTES = 1_000_000;
  private static final Map<String, String> FORMS =
      Map.of(
          "txt", "text", "md", "text", "text", "text", "csv", "csv", "tsv", "csv", "json", "jsonld",
          "jsonld", "jsonld", "ndjson", "jsonld", "html", "html", "htm", "html");

  /** A file that cannot be read; told as one line. */
  static final class Unreadable extends Exception {
    private static final long serialVersionUID = 1L;

    Unreadable(String message) {
      super(message);
    }
  }

  /**
   * All files that are named, and those of a known form in folders that are named, in order; each
   * once. Files of two folders that have one name are told apart by the folder before it.
   */
  public static List<SourceFile> of(List<Path> named) throws IOException {
    var found = new LinkedHashMap<Path, SourceFile>();
    for (var path : named) {
      for (var file : Files.isDirectory(path) ? inside(path) : List.of(path)) {
        var name =
            file.equals(path) ? String.valueOf(path.getFileName()) : plain(path.relativize(file));
        found.putIfAbsent(file.toAbsolutePath().normalize(), new SourceFile(file, name));
      }
    }
    var uses = new HashMap<String, Integer>();
    found.values().forEach(file -> uses.merge(file.name(), 1, Integer::sum));
    return found.values().stream()
        .map(file -> uses.getOrDefault(file.name(), 0) > 1 ? file.byItsPath() : file)
        .toList();
  }

  private static Set<Path> inside(Path folder) throws IOException {
    var inside = new TreeSet<Path>();
    try (var walk = Files.walk(folder)) {
      walk.filter(Files::isRegularFile)
          .filter(file -> FORMS.containsKey(ending(file)))
          .forEach(inside::add);
    }
    return inside;
  }

  private SourceFile byItsPath() {
    return new SourceFile(path, plain(path.normalize()));
  }

  private static String plain(Path path) {
    return path.toString().replace('\\', '/');
  }

  /** Under which name of its input the calculation takes the file. */
  String form() {
    return FORMS.getOrDefault(ending(path), "text");
  }

  /** The name without folders and ending. */
  String stem() {
    String plain = String.valueOf(path.getFileName());
    int point = plain.lastIndexOf('.');
    return point > 0 ? plain.substring(0, point) : plain;
  }

  private static String ending(Path file) {
    String name = String.valueOf(file.getFileName());
    return name.substring(name.lastIndexOf('.') + 1).toLowerCase(Locale.ROOT);
  }

  long bytes() {
    try {
      return Files.size(path);
    } catch (IOException gone) {
      return 0;
    }
  }

  /**
   * The text of the file.
   *
   * @param charset in which it is said to be; null: UTF-8, or what its byte order mark says
   */
  String text(@Nullable Charset charset) throws Unreadable {
    long size = bytes();
    if (size > MOST_BYTES) {
      throw new Unreadable(
          "has " + size + " bytes; at most " + MOST_BYTES + " of a file are read, so divide it");
    }
    byte[] bytes;
    try {
      bytes = Files.readAllBytes(path);
    } catch (IOException unreadable) {
      throw new Unreadable("cannot be read");
    }
    var meant = charset == null ? marked(bytes) : charset;
    var decoder =
        meant
            .newDecoder()
            .onMalformedInput(CodingErrorAction.REPORT)
            .onUnmappableCharacter(CodingErrorAction.REPORT);
    var in = ByteBuffer.wrap(bytes);
    try {
      CharBuffer text = decoder.decode(in);
      String read = text.toString();
      refuseBinary(read);
      return read.startsWith("\uFEFF") ? read.substring(1) : read;
    } catch (CharacterCodingException malformed) {
      throw new Unreadable(
          "is not "
              + meant
              + " from byte "
              + (in.position() + 1)
              + " on; save it as UTF-8, or say --charset, for example windows-1252");
    }
  }

  private static void refuseBinary(String text) throws Unreadable {
    if (text.indexOf('\0') >= 0) {
      throw new Unreadable("is no text: it has zero bytes");
    }
  }

  private static Charset marked(byte[] bytes) {
    int first = bytes.length > 1 ? bytes[0] & 0xff : 0;
    int second = bytes.length > 1 ? bytes[1] & 0xff : 0;
    boolean little = first == 0xff && second == 0xfe;
    boolean big = first == 0xfe && second == 0xff;
    return little || big ? StandardCharsets.UTF_16 : StandardCharsets.UTF_8;
  }
}
