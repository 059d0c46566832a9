package tamis.engine.table;

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
  private final Map<String, Source> sources;

  Table(
      String name,
      String title,
      List<String> columns,
      Map<String, Row> byKey,
      Map<String, Source> sources) {
    this.name = name;
    this.title = title;
    this.columns = List.copyOf(columns);
    this.rows = List.copyOf(byKey.values());
    this.byKey = byKey;
    this.sources = sources;
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

  /** The work that a row takes its fact from, or null if its table names none. */
  public @Nullable Source source(Row row) {
    @Nullable String key = row.textOrNull("source");
    return key == null ? null : sources.get(key);
  }
}
