package tamis.api.representation;

import java.nio.charset.StandardCharsets;
import java.util.List;

/** Writes RFC 4180: CRLF, quoted only where needed. */
final class CsvText {
  private final StringBuilder text = new StringBuilder();
  private final char separator;

  /** Where a comma is the decimal mark, a semicolon separates, as spreadsheets there expect. */
  CsvText(Options options) {
    if (options.bom()) {
      text.append('\uFEFF');
    }
    this.separator = options.decimalComma() ? ';' : ',';
  }

  void line(List<String> cells) {
    for (int i = 0; i < cells.size(); i++) {
      if (i > 0) {
        text.append(separator);
      }
      cell(cells.get(i));
    }
    text.append("\r\n");
  }

  private void cell(String cell) {
    boolean plain = cell.indexOf(separator) < 0;
    for (int i = 0; plain && i < cell.length(); i++) {
      char letter = cell.charAt(i);
      plain = letter != '"' && letter != '\r' && letter != '\n';
    }
    if (plain) {
      text.append(cell);
    } else {
      text.append('"').append(cell.replace("\"", "\"\"")).append('"');
    }
  }

  /** Text that a spreadsheet would take for a formula gets an apostrophe, which it hides. */
  static String guarded(String cell) {
    return !cell.isEmpty() && "=+-@\t\r".indexOf(cell.charAt(0)) >= 0 ? "'" + cell : cell;
  }

  byte[] bytes() {
    return text.toString().getBytes(StandardCharsets.UTF_8);
  }
}
