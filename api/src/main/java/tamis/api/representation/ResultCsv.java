package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/** Writes tables as CSV (RFC 4180), with a heading that does not depend on what is in them. */
public final class ResultCsv {
  private ResultCsv() {}

  /** The picked part of a result, else the part marked as table, else its single values. */
  static byte[] of(Record result, Options options) {
    String picked = options.pick();
    if (picked != null) {
      return of(Incomplete.checked(result, picked, options), options);
    }
    @Nullable Component table = Shape.of(result.getClass()).table();
    return of(table == null ? Pick.whole(result) : Pick.of(result, "/" + table.name()), options);
  }

  private static byte[] of(Pick pick, Options options) {
    Form form = pick.form();
    @Nullable Object value = pick.value();
    if (form instanceof Form.Listed listed) {
      List<?> rows = value == null ? List.of() : (List<?>) value;
      return written(Columns.ofRows(listed.entry()), rows, options);
    }
    if (form instanceof Form.Mapped map) {
      List<?> entries = value == null ? List.of() : new ArrayList<>(((Map<?, ?>) value).entrySet());
      return written(Columns.ofEntries(map), entries, options);
    }
    String name = pick.pointer().substring(pick.pointer().lastIndexOf('/') + 1);
    Columns columns = Columns.ofOne(form, name);
    return written(columns, value == null ? List.of() : List.of(value), options);
  }

  private static byte[] written(Columns columns, List<?> rows, Options options) {
    Cells cells = new Cells(options.decimalComma());
    CsvText csv = new CsvText(options);
    csv.line(columns.headings());
    for (Object row : rows) {
      csv.line(columns.cells(cells, row));
    }
    return csv.bytes();
  }

  /** A reference table, each row with its source. */
  public static byte[] table(Table table, Options options) {
    CsvText csv = new CsvText(options);
    csv.line(table.columns());
    for (Row row : table.rows()) {
      List<String> cells = new ArrayList<>();
      for (String column : table.columns()) {
        String cell = row.cells().getOrDefault(column, "");
        boolean number = Figures.isNumber(cell);
        String marked = number && options.decimalComma() ? cell.replace('.', ',') : cell;
        cells.add(number ? marked : CsvText.guarded(cell));
      }
      csv.line(cells);
    }
    return csv.bytes();
  }

  /** Rows of text under a heading; text that looks like a spreadsheet's formula is guarded. */
  public static byte[] rows(List<String> heading, Iterable<List<String>> rows, Options options) {
    CsvText csv = new CsvText(options);
    csv.line(heading);
    for (List<String> row : rows) {
      csv.line(row.stream().map(c -> Figures.isNumber(c) ? c : CsvText.guarded(c)).toList());
    }
    return csv.bytes();
  }
}
