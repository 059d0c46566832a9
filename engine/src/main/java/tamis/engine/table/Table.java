package tamis.engine.table;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A table of facts, complete in memory. */
public final class Table {
  private final String name;
  private final String title;
  private final List<String> columns;
  private final List<Row> rows;
  private final Map<String, Row> byKey;

  Table(String name, String title, List<String> columns, List<Row> rows) {
    this.name = name;
    this.title = title;
    this.columns = List.copyOf(columns);
    this.rows = List.copyOf(rows);
    Map<String, Row> index = new LinkedHashMap<>();
    rows.forEach(row -> index.put(row.key(), row));
    this.byKey = index;
  }

  public String name() {
    return name;
  }

  /** What the table holds, for a person. */
  public String title() {
    return title;
  }

  public List<String> columns() {
    return columns;
  }

  /** All rows, in the order of the file. */
  public List<Row> rows() {
    return rows;
  }

  /** The row with this key, or null. */
  public @Nullable Row row(String key) {
    return byKey.get(key);
  }
}
