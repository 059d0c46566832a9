package tamis.api.collection;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.api.representation.CsvInput;
import tamis.api.representation.Options;
import tamis.api.representation.ResultCsv;
import tamis.engine.fault.Refusal;

/**
 * The lines that could not be read, as a table that a person fills in: what is written under {@code
 * instead} is read in place of the line at the next run, and stays.
 */
final class SideFile {
  private static final List<String> HEADING =
      List.of("file", "recipe", "line", "text", "why", "candidates", "instead");
  private static final String INSTEAD = "instead";

  private final Path path;
  private final Map<String, Map<String, String>> rows = new LinkedHashMap<>();
  private final Map<String, Map<String, String>> corrections = new LinkedHashMap<>();
  private final Map<String, List<Map<String, String>>> byRecipe = new HashMap<>();
  private int open;

  private SideFile(Path path) {
    this.path = path;
  }

  /**
   * @throws Refusal if it is there and cannot be read as such a table
   */
  static SideFile at(Path path) throws IOException {
    var side = new SideFile(path);
    if (Files.exists(path)) {
      byte[] bytes = Files.readAllBytes(path);
      for (var row : CsvInput.rows(bytes, isSemicolons(bytes), HEADING)) {
        if (!row.getOrDefault(INSTEAD, "").isBlank()) {
          side.corrections.put(key(row), row);
        }
      }
      for (var row : side.corrections.values()) {
        var of = recipe(text(row, "file"), text(row, "recipe"));
        side.byRecipe.computeIfAbsent(of, key -> new ArrayList<>()).add(row);
      }
    }
    return side;
  }

  private static boolean isSemicolons(byte[] bytes) {
    for (byte one : bytes) {
      if (one == ';' || one == ',') {
        return one == ';';
      }
    }
    return false;
  }

  private static String key(Map<String, String> row) {
    return String.join(
        "\n",
        row.getOrDefault("file", ""),
        row.getOrDefault("recipe", ""),
        row.getOrDefault("text", ""));
  }

  private static String recipe(String file, String number) {
    return file + "\n" + number;
  }

  /** What a person wrote for a recipe of a file, as the calculation takes it. */
  List<Map<String, String>> correctionsOf(String file, int recipe) {
    var found = new ArrayList<Map<String, String>>();
    for (var row : byRecipe.getOrDefault(recipe(file, String.valueOf(recipe)), List.of())) {
      rows.put(key(row), row);
      found.add(Map.of("text", text(row, "text"), INSTEAD, text(row, INSTEAD)));
    }
    return found;
  }

  private static String text(Map<String, String> row, String column) {
    return row.getOrDefault(column, "");
  }

  /** A line that is still open; a correction of it that did not help stays beside it. */
  void add(String file, int recipe, int line, String text, String why, String candidates) {
    var row = new LinkedHashMap<String, String>();
    row.put("file", file);
    row.put("recipe", String.valueOf(recipe));
    row.put("line", String.valueOf(line));
    row.put("text", text.strip());
    row.put("why", why);
    row.put("candidates", candidates);
    var known = corrections.get(key(row));
    row.put(INSTEAD, known == null ? "" : text(known, INSTEAD));
    rows.merge(key(row), row, (one, other) -> joined(one, other));
    open++;
  }

  /** Two reasons for one line stand in one row. */
  private static Map<String, String> joined(Map<String, String> one, Map<String, String> other) {
    var both = new LinkedHashMap<>(other);
    String before = text(one, "why");
    boolean more = !before.isEmpty() && !before.equals(text(other, "why"));
    if (more && text(one, INSTEAD).isEmpty()) {
      both.put("why", before + "; " + text(other, "why"));
    }
    return both;
  }

  /** Lines that are open after this run. */
  int open() {
    return open;
  }

  /**
   * Writes the table with all that a person wrote in it, or takes it away if there is nothing in
   * it.
   */
  void write() throws IOException {
    corrections.forEach(rows::putIfAbsent); // of files that this run did not read
    if (rows.isEmpty()) {
      Files.deleteIfExists(path);
      return;
    }
    var lines = new ArrayList<List<String>>();
    for (var row : rows.values()) {
      lines.add(HEADING.stream().map(column -> text(row, column)).toList());
    }
    OutFolder.replace(path, ResultCsv.rows(HEADING, lines, Options.none()));
  }
}
