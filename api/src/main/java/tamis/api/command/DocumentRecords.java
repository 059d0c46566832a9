package tamis.api.command;

import java.io.BufferedOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.fault.Refusal;

/**
 * Formula documents as records, one a line in the order in which they are named. What is in a file
 * is not judged here: a file that is no formula is a record that is rejected, with the reason.
 */
final class DocumentRecords {
  private static final byte[] BEGIN = "{\"formula\":".getBytes(StandardCharsets.US_ASCII);
  private static final byte[] BYTE_ORDER_MARK = {(byte) 0xef, (byte) 0xbb, (byte) 0xbf};

  private DocumentRecords() {}

  /**
   * Writes the records, unless they are there already as an interrupted run left them.
   *
   * @param documents files, and folders for all their {@code .json} files by name
   * @param with a JSON object: what each record says besides
   */
  static void write(List<Path> documents, String with, Path records) throws IOException {
    byte[] rest = rest(with);
    List<Path> files = files(documents);
    var fresh = records.resolveSibling(records.getFileName() + ".new");
    try (var out = new BufferedOutputStream(Files.newOutputStream(fresh))) {
      for (Path document : files) {
        out.write(BEGIN);
        out.write(line(Files.readAllBytes(document)));
        out.write(rest);
      }
    }
    if (Files.exists(records) && Files.mismatch(records, fresh) < 0) {
      Files.delete(fresh);
    } else {
      Files.move(fresh, records, StandardCopyOption.REPLACE_EXISTING);
    }
  }

  private static byte[] rest(String with) {
    String object = with.strip();
    try {
      var tree = StrictJson.tree(object.getBytes(StandardCharsets.UTF_8), JsonLimits.usual());
      if (!(tree instanceof Map<?, ?> map)) {
        throw otherWith(with);
      }
      String inner = object.substring(1, object.length() - 1).replace('\n', ' ');
      return ((map.isEmpty() ? "" : "," + inner) + "}\n").getBytes(StandardCharsets.UTF_8);
    } catch (Refusal unreadable) {
      throw otherWith(with);
    }
  }

  private static WrongUse otherWith(String with) {
    return new WrongUse(
        "--with must be a JSON object such as {\"to\":{\"factor\":2}}, was " + with);
  }

  /** The documents that are named, and those in folders that are named, in this order. */
  static List<Path> files(List<Path> documents) throws IOException {
    List<Path> files = new ArrayList<>();
    for (Path document : documents) {
      if (Files.isDirectory(document)) {
        try (var entries = Files.list(document)) {
          entries.filter(one -> one.toString().endsWith(".json")).sorted().forEach(files::add);
        }
      } else if (Files.isReadable(document)) {
        files.add(document);
      } else {
        throw new WrongUse("a document must be a file that can be read, was " + document);
      }
    }
    return files;
  }

  /** A line end within JSON stands between its parts, where a space says the same. */
  private static byte[] line(byte[] text) {
    boolean marked = Arrays.mismatch(text, BYTE_ORDER_MARK) == BYTE_ORDER_MARK.length;
    byte[] line = marked ? Arrays.copyOfRange(text, BYTE_ORDER_MARK.length, text.length) : text;
    for (int i = 0; i < line.length; i++) {
      line[i] = line[i] == '\n' || line[i] == '\r' ? (byte) ' ' : line[i];
    }
    return line;
  }
}
