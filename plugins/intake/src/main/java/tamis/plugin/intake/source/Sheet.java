package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.plugin.intake.word.Phrase;

/** Reads a table with named columns: one line of ingredients in each row. */
public final class Sheet {
  private static final Map<String, String> COLUMNS =
      Map.ofEntries(
          Map.entry("line", "line"),
          Map.entry("text", "line"),
          Map.entry("quantity", "quantity"),
          Map.entry("amount", "quantity"),
          Map.entry("qty", "quantity"),
          Map.entry("menge", "quantity"),
          Map.entry("unit", "unit"),
          Map.entry("einheit", "unit"),
          Map.entry("ingredient", "ingredient"),
          Map.entry("item", "ingredient"),
          Map.entry("zutat", "ingredient"),
          Map.entry("state", "state"),
          Map.entry("preparation", "preparation"),
          Map.entry("note", "preparation"),
          Map.entry("notes", "preparation"),
          Map.entry("part", "part"),
          Map.entry("stage", "part"),
          Map.entry("formula", "title"),
          Map.entry("recipe", "title"),
          Map.entry("title", "title"),
          Map.entry("yield", "yield"),
          Map.entry("step", "step"),
          Map.entry("steps", "step"));

  private final Map<String, Recipe> recipes = new LinkedHashMap<>();

  private record Recipe(
      @Nullable String title,
      List<Source.Piece> lines,
      List<SourceLine> steps,
      List<String> yields,
      List<SourceLine> notes) {

    Source source(int recipes) {
      return new Source(
          List.of(), title == null ? "" : title, lines, steps, yields, notes, null, recipes, null);
    }
  }

  private Sheet() {}

  public static Opened opened(String csv) {
    List<List<String>> rows = new CsvRows(csv).all();
    if (rows.isEmpty()) {
      throw refused("the table is empty; its first row names the columns");
    }
    List<String> columns = columns(rows.get(0));
    Sheet sheet = new Sheet();
    for (int i = 1; i < rows.size(); i++) {
      sheet.row(columns, rows.get(i), i + 1);
    }
    if (sheet.recipes.isEmpty()) {
      throw refused("the table has no row below its heading");
    }
    int count = sheet.recipes.size();
    return Opened.of(sheet.recipes.values().stream().map(recipe -> recipe.source(count)).toList());
  }

  /**
   * A table of lines that was written with its formula beside it, in the column {@code document}:
   * the rows are its lines, whatever was changed in them since; null if it is no such table.
   */
  public static @Nullable Map<?, ?> document(String csv) {
    List<List<String>> rows = new CsvRows(csv).all();
    int at = rows.isEmpty() ? -1 : rows.get(0).indexOf("document");
    if (at < 0 || rows.size() < 2) {
      return null;
    }
    Map<Object, Object> document = new LinkedHashMap<>();
    List<Map<String, Object>> lines = new ArrayList<>();
    for (List<String> row : rows.subList(1, rows.size())) {
      Map<String, Object> line = new LinkedHashMap<>();
      for (int i = 0; i < row.size(); i++) {
        String cell = unguarded(row.get(i));
        if (!cell.isBlank() && i != at) {
          line.put(i < rows.get(0).size() ? rows.get(0).get(i) : "column " + (i + 1), cell);
        } else if (!cell.isBlank() && parsed(cell) instanceof Map<?, ?> beside) {
          document.putAll(beside);
        }
      }
      if (!line.isEmpty()) {
        line.computeIfPresent("remains", (name, part) -> number(String.valueOf(part)));
        lines.add(line);
      }
    }
    if (document.isEmpty()) {
      return null;
    }
    document.put("lines", lines);
    return document;
  }

  private static Object number(String part) {
    try {
      return Double.valueOf(part);
    } catch (NumberFormatException written) {
      return part;
    }
  }

  /** A spreadsheet takes a cell that begins so for a calculation, so it was written with a tick. */
  private static String unguarded(String cell) {
    boolean guarded =
        cell.length() > 1 && cell.charAt(0) == '\'' && "=+-@".indexOf(cell.charAt(1)) >= 0;
    return guarded ? cell.substring(1) : cell;
  }

  private static @Nullable Object parsed(String cell) {
    try {
      return JsonText.parse(cell);
    } catch (JsonText.Broken broken) {
      throw refused("the formula in the column `document` is no JSON: " + broken.getMessage());
    }
  }

  private static List<String> columns(List<String> heading) {
    List<String> columns = new ArrayList<>();
    boolean text = heading.stream().anyMatch(cell -> Phrase.folded(cell).equals("text"));
    for (String cell : heading) {
      String name = Phrase.folded(cell);
      boolean number = text && name.equals("line"); // a table of our own: its number is no text
      columns.add(number ? "ignored" : COLUMNS.getOrDefault(name, ""));
    }
    if (!columns.contains("line") && !columns.contains("ingredient")) {
      throw refused(
          "the first row must name a column `ingredient` or `line`, it has "
              + String.join(", ", heading));
    }
    return columns;
  }

  private static Refusal refused(String why) {
    return new Refusal(
        new Fault(
            FaultCode.NOT_ALLOWED,
            "/csv",
            null,
            "line, or quantity, unit, ingredient, state, preparation, part, recipe, yield, step",
            why));
  }

  private void row(List<String> columns, List<String> cells, int number) {
    Map<String, String> row = new LinkedHashMap<>();
    List<String> other = new ArrayList<>();
    for (int i = 0; i < cells.size(); i++) {
      String column = i < columns.size() ? columns.get(i) : "";
      String cell = cells.get(i).strip();
      if (!cell.isEmpty()) {
        if (column.isEmpty()) {
          other.add(cell);
        } else {
          row.merge(column, cell, (a, b) -> a + ", " + b);
        }
      }
    }
    if (row.isEmpty() && other.isEmpty()) {
      return;
    }
    @Nullable String title = row.get("title");
    Recipe recipe =
        recipes.computeIfAbsent(
            title == null ? "" : title,
            t ->
                new Recipe(
                    title,
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>(),
                    new ArrayList<>()));
    String line = line(row, other);
    if (!line.isEmpty()) {
      SourceLine source = new SourceLine(number, line, 0, line.length());
      recipe.lines().add(new Source.Piece(source, row.get("part")));
    } else {
      List<String> said = new ArrayList<>(other);
      said.addAll(Stream.ofNullable(row.get("preparation")).toList());
      said.forEach(note -> recipe.notes().add(new SourceLine(number, note, 0, note.length())));
    }
    @Nullable String step = row.get("step");
    if (step != null) {
      recipe.steps().add(new SourceLine(number, step, 0, step.length()));
    }
    @Nullable String gives = row.get("yield");
    if (gives != null && !recipe.yields().contains(gives)) {
      recipe.yields().add(gives);
    }
  }

  /** The cells of a row as one line, in the order in which a baker writes them. */
  private static String line(Map<String, String> row, List<String> other) {
    StringBuilder line = new StringBuilder();
    boolean whole = row.get("line") != null;
    List<String> columns = List.of("quantity", "unit", "state", "ingredient");
    for (String column : whole ? List.of("line") : columns) {
      @Nullable String cell = row.get(column);
      if (cell != null) {
        line.append(line.isEmpty() ? "" : " ").append(cell);
      }
    }
    if (whole) {
      return line.toString();
    }
    @Nullable String preparation = row.get("preparation");
    if (preparation != null && !line.isEmpty()) {
      line.append(", ").append(preparation);
    }
    if (!other.isEmpty() && !line.isEmpty()) {
      line.append(" (").append(String.join("; ", other)).append(')');
    }
    return line.toString();
  }
}
