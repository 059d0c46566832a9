package tamis.engine.table;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Reads tables from class-path resources. The first bad row stops the reading and is named by file,
 * line and column. Every row ends with {@code source,locator,basis,as_of} unless the table says
 * otherwise.
 */
public final class TableReader {
  private static final List<String> PROVENANCE = List.of("source", "locator", "basis", "as_of");
  private static final List<String> BASES =
      List.of("measured", "regulation", "standard", "handbook", "common practice", "memory");

  private TableReader() {}

  /**
   * @param owner a class beside whose package the resource lies
   * @param resource file name, ending in {@code .csv}
   * @param title what the table holds, for a person
   * @param keyColumns the columns that together identify a row
   * @throws BadTable at the first bad row
   */
  public static Table read(Class<?> owner, String resource, String title, List<String> keyColumns) {
    Table table = plain(owner, resource, title, keyColumns);
    for (Row row : table.rows()) {
      PROVENANCE.forEach(row::text);
      if (!BASES.contains(row.text("basis"))) {
        throw new BadTable(table.name(), row.line(), "basis", "must be one of " + BASES);
      }
    }
    return table;
  }

  /** A table whose rows carry no source of their own, such as the list of sources. */
  public static Table plain(
      Class<?> owner, String resource, String title, List<String> keyColumns) {
    String name = resource.substring(resource.lastIndexOf('/') + 1).replace(".csv", "");
    List<List<String>> records = Csv.read(text(owner, resource));
    List<String> columns = records.get(0);
    for (String key : keyColumns) {
      if (!columns.contains(key)) {
        throw new BadTable(name, 1, key, "is no column");
      }
    }
    List<Row> rows = new ArrayList<>();
    Map<String, Integer> lineOfKey = new LinkedHashMap<>();
    for (int i = 1; i < records.size(); i++) {
      Row row = row(name, i + 1, columns, records.get(i), keyColumns);
      @Nullable Integer earlier = lineOfKey.put(row.key(), i + 1);
      if (earlier != null) {
        throw new BadTable(
            name, i + 1, keyColumns.get(0), row.key() + " stands in line " + earlier + " too");
      }
      rows.add(row);
    }
    return new Table(name, title, columns, rows);
  }

  private static Row row(
      String table, int line, List<String> columns, List<String> fields, List<String> keyColumns) {
    if (fields.size() != columns.size()) {
      throw new BadTable(
          table,
          line,
          columns.get(0),
          fields.size() + " fields under " + columns.size() + " columns");
    }
    Map<String, String> cells = new LinkedHashMap<>();
    for (int i = 0; i < columns.size(); i++) {
      if (!fields.get(i).isBlank()) {
        cells.put(columns.get(i), fields.get(i).strip());
      }
    }
    List<String> key = keyColumns.stream().map(c -> cells.getOrDefault(c, "")).toList();
    return new Row(table, line, String.join("/", key), Map.copyOf(cells));
  }

  private static String text(Class<?> owner, String resource) {
    try (InputStream stream = owner.getResourceAsStream(resource)) {
      if (stream == null) {
        throw new BadTable(resource, 0, "", "is not there");
      }
      return new String(stream.readAllBytes(), StandardCharsets.UTF_8);
    } catch (IOException broken) {
      throw new BadTable(resource, 0, "", "cannot be read: " + broken.getMessage());
    }
  }
}
