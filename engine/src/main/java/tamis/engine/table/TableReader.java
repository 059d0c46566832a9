package tamis.engine.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.StringJoiner;
import org.jspecify.annotations.Nullable;

/**
 * Reads tables from class-path resources. The first bad row stops the reading and is named by file,
 * line and column. Every row ends with {@code source,locator,basis,as_of} unless the table says
 * otherwise; its source stands in the engine's list or in a {@code sources.csv} beside the table.
 */
public final class TableReader {
  private static final List<String> PROVENANCE = List.of("source", "locator", "basis", "as_of");
  private static final List<String> BASES =
      List.of("measured", "regulation", "standard", "handbook", "common practice", "memory");

  /** What decoding puts in place of bytes that are no UTF-8; no table has it of its own. */
  private static final char REPLACEMENT = '\uFFFD';

  private TableReader() {}

  /**
   * @param owner a class beside whose package the resource lies
   * @param resource file name, ending in {@code .csv}
   * @param title what the table holds, for a person
   * @param keyColumns the columns that together identify a row
   * @throws BadTable at the first bad row
   */
  public static Table read(Class<?> owner, String resource, String title, List<String> keyColumns) {
    Map<String, Source> sources = Sources.beside(owner, resource);
    Table table = read(owner, resource, title, keyColumns, sources);
    for (Row row : table.rows()) {
      for (String column : PROVENANCE) {
        row.text(column);
      }
      if (!BASES.contains(row.text("basis"))) {
        throw new BadTable(table.name(), row.line(), "basis", "must be one of " + BASES);
      }
      if (!sources.containsKey(row.source())) {
        throw new BadTable(
            table.name(), row.line(), "source", row.source() + " is in no list of sources");
      }
    }
    return table;
  }

  /** A table whose rows carry no source of their own, such as the list of sources. */
  public static Table plain(
      Class<?> owner, String resource, String title, List<String> keyColumns) {
    return read(owner, resource, title, keyColumns, Map.of());
  }

  private static Table read(
      Class<?> owner,
      String resource,
      String title,
      List<String> keyColumns,
      Map<String, Source> sources) {
    String name = resource.substring(resource.lastIndexOf('/') + 1).replace(".csv", "");
    List<Csv.Line> lines = Csv.read(name, text(owner, resource));
    if (lines.isEmpty()) {
      throw new BadTable(name, 1, "", "there is no heading");
    }
    Map<String, Integer> places = places(name, lines.get(0).fields(), keyColumns);
    Map<String, Row> rows = new LinkedHashMap<>();
    for (Csv.Line line : lines.subList(1, lines.size())) {
      Row row = row(name, line, places, keyColumns);
      @Nullable Row earlier = rows.put(row.key(), row);
      if (earlier != null) {
        throw new BadTable(
            name,
            row.line(),
            keyColumns.get(0),
            row.key() + " stands in line " + earlier.line() + " too");
      }
    }
    return new Table(name, title, lines.get(0).fields(), rows, sources);
  }

  /** The columns in their order, each with its place. */
  private static Map<String, Integer> places(
      String table, List<String> columns, List<String> keyColumns) {
    Map<String, Integer> places = new LinkedHashMap<>();
    for (String column : columns) {
      if (column.isBlank() || places.put(column, places.size()) != null) {
        throw new BadTable(table, 1, column, "a column needs a name of its own");
      }
    }
    for (String key : keyColumns) {
      if (!places.containsKey(key)) {
        throw new BadTable(table, 1, key, "is no column");
      }
    }
    return places;
  }

  private static Row row(
      String table, Csv.Line line, Map<String, Integer> places, List<String> keyColumns) {
    List<String> fields = line.fields();
    if (fields.size() != places.size()) {
      throw new BadTable(
          table,
          line.number(),
          places.keySet().iterator().next(),
          fields.size() + " fields under " + places.size() + " columns");
    }
    Cells cells = new Cells(places, fields);
    StringJoiner key = new StringJoiner("/");
    for (String column : keyColumns) {
      key.add(cells.getOrDefault(column, ""));
    }
    return new Row(table, line.number(), key.toString(), cells);
  }

  private static String text(Class<?> owner, String resource) {
    try (InputStream stream = owner.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new BadTable(resource, 0, "", "is not there");
      }
      String text = new String(stream.readAllBytes(), StandardCharsets.UTF_8);
      if (text.indexOf(REPLACEMENT) >= 0) {
        throw new BadTable(resource, 0, "", "is no UTF-8");
      }
      return text;
    } catch (IOException broken) {
      throw new BadTable(resource, 0, "", "cannot be read: " + broken.getMessage());
    }
  }
}
