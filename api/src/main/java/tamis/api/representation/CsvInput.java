package tamis.api.representation;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/**
 * Reads CSV (RFC 4180) with a heading row, as spreadsheets write it: an empty cell is a value left
 * out, and the apostrophe that guards a cell from being taken for a spreadsheet's formula goes.
 */
public final class CsvInput {
  private static final char BYTE_ORDER_MARK = '\uFEFF';

  private final String text;
  private final char separator;
  private int at;
  private int line = 1;

  private CsvInput(String text, char separator) {
    this.text = text;
    this.separator = separator;
  }

  /**
   * The rows as maps from heading to cell.
   *
   * @param decimalComma a semicolon separates, as where a comma is the decimal mark
   * @param headings that are allowed
   * @throws Refusal with all faults of the form of the file
   */
  public static List<Map<String, String>> rows(
      byte[] utf8, boolean decimalComma, List<String> headings) {
    @Nullable String text = PercentText.utf8(ByteBuffer.wrap(utf8));
    if (text == null) {
      throw Refusal.of(FaultCode.NOT_UTF8, "the body has bytes that are no UTF-8");
    }
    var input = new CsvInput(text, decimalComma ? ';' : ',');
    input.at = !text.isEmpty() && text.charAt(0) == BYTE_ORDER_MARK ? 1 : 0;
    return input.rows(headings);
  }

  private List<Map<String, String>> rows(List<String> headings) {
    if (at >= text.length()) {
      throw notCsv(
          "the heading row is missing: " + String.join(String.valueOf(separator), headings));
    }
    List<String> heading = row();
    refuseOther(heading, headings);
    var rows = new ArrayList<Map<String, String>>();
    while (at < text.length()) {
      int begins = line;
      List<String> cells = row();
      if (cells.size() == 1 && cells.get(0).isEmpty()) {
        continue;
      }
      if (cells.size() != heading.size()) {
        throw notCsv(
            "line " + begins + " has " + cells.size() + " cells, the heading " + heading.size());
      }
      var row = new LinkedHashMap<String, String>();
      for (int i = 0; i < cells.size(); i++) {
        String cell = unguarded(cells.get(i).strip());
        if (!cell.isEmpty()) {
          row.put(heading.get(i), cell);
        }
      }
      rows.add(row);
    }
    return rows;
  }

  private void refuseOther(List<String> heading, List<String> allowed) {
    var faults = new Faults();
    var seen = new ArrayList<String>();
    for (int i = 0; i < heading.size(); i++) {
      String name = heading.get(i).strip();
      heading.set(i, name);
      if (!allowed.contains(name)) {
        faults.add(
            new Fault(
                FaultCode.UNKNOWN_FIELD,
                "",
                name,
                String.join(", ", allowed),
                "heading `"
                    + name
                    + "` is not known here; known are "
                    + String.join(", ", allowed)
                    + ", with `"
                    + separator
                    + "` between them"));
      } else if (seen.contains(name)) {
        faults.add(FaultCode.DUPLICATE_NAME, "", "heading `" + name + "` stands twice");
      }
      seen.add(name);
    }
    faults.refuseIfAny();
  }

  private List<String> row() {
    var cells = new ArrayList<String>();
    while (true) {
      cells.add(at < text.length() && text.charAt(at) == '"' ? quoted() : plain());
      if (at >= text.length()) {
        return cells;
      }
      char next = text.charAt(at++);
      if (next == separator) {
        continue;
      }
      if (next == '\r' && at < text.length() && text.charAt(at) == '\n') {
        at++;
      }
      line++;
      return cells;
    }
  }

  private String plain() {
    int begin = at;
    while (at < text.length() && !isEnd(text.charAt(at))) {
      if (text.charAt(at) == '"') {
        throw notCsv("line " + line + " has a quote inside a cell that does not begin with one");
      }
      at++;
    }
    return text.substring(begin, at);
  }

  private boolean isEnd(char letter) {
    return letter == separator || letter == '\n' || letter == '\r';
  }

  private String quoted() {
    int begins = line;
    var cell = new StringBuilder();
    for (at++; at < text.length(); at++) {
      char letter = text.charAt(at);
      if (letter == '"') {
        boolean doubled = at + 1 < text.length() && text.charAt(at + 1) == '"';
        if (!doubled) {
          at++;
          if (at < text.length() && !isEnd(text.charAt(at))) {
            throw notCsv("line " + line + " goes on behind a closing quote");
          }
          return cell.toString();
        }
        at++;
      }
      line += letter == '\n' ? 1 : 0;
      cell.append(letter);
    }
    throw notCsv("the quote that line " + begins + " opens is not closed");
  }

  private static String unguarded(String cell) {
    boolean guarded = cell.length() > 1 && cell.charAt(0) == '\'';
    return guarded && "=+-@".indexOf(cell.charAt(1)) >= 0 ? cell.substring(1) : cell;
  }

  private static Refusal notCsv(String why) {
    return Refusal.of(FaultCode.NOT_CSV, "the body is no CSV: " + why);
  }
}
