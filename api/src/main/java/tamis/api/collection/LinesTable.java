package tamis.api.collection;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import tamis.api.representation.CsvInput;
import tamis.api.representation.Options;
import tamis.api.representation.ResultCsv;
import tamis.api.representation.ResultJson;
import tamis.engine.formula.Formula;

/**
 * The lines of a formula as a table, with the formula itself beside the first: what a table of
 * lines has no column for (title, yield, stages) comes back from there.
 */
final class LinesTable {
  private static final List<String> COLUMNS =
      List.of(
          "ingredient",
          "formula",
          "quantity",
          "state",
          "preparation",
          "stage",
          "role",
          "remains",
          "note");

  private LinesTable() {}

  /**
   * @param lines of the formula, as a table with its usual columns
   */
  static byte[] with(byte[] lines, Formula formula) {
    String document = new String(ResultJson.bytes(formula), StandardCharsets.UTF_8);
    var heading = new ArrayList<>(COLUMNS);
    heading.add("document");
    var rows = new ArrayList<List<String>>();
    for (var line : CsvInput.rows(lines, false, COLUMNS)) {
      var row = new ArrayList<String>();
      COLUMNS.forEach(column -> row.add(line.getOrDefault(column, "")));
      row.add(rows.isEmpty() ? document : "");
      rows.add(row);
    }
    return ResultCsv.rows(heading, rows, Options.none());
  }
}
