package tamis.engine.table;

import java.util.ArrayList;
import java.util.List;

/** Reads RFC 4180 text: comma, quoted fields, doubled quotes, LF or CRLF. */
final class Csv {
  private final String table;
  private final String text;
  private int at;
  private int line = 1;

  private Csv(String table, String text) {
    this.table = table;
    this.text = text;
    this.at = text.startsWith("\uFEFF") ? 1 : 0;
  }

  /** One record and the line it begins in: a quoted field may span lines. */
  record Line(int number, List<String> fields) {}

  /**
   * @throws BadTable if a quote is open, or stands where none may stand
   */
  static List<Line> read(String table, String text) {
    Csv reader = new Csv(table, text);
    List<Line> lines = new ArrayList<>();
    while (reader.at < text.length()) {
      lines.add(new Line(reader.line, reader.record()));
    }
    return lines;
  }

  private List<String> record() {
    List<String> fields = new ArrayList<>();
    boolean more = true;
    while (more) {
      fields.add(peek() == '"' ? quoted() : bare());
      more = peek() == ',';
      if (more) {
        at++;
      }
    }
    endOfLine();
    return fields;
  }

  private String bare() {
    int start = at;
    while (at < text.length()) {
      char next = text.charAt(at);
      if (next == ',' || next == '\n' || next == '\r') {
        break;
      }
      if (next == '"') {
        throw bad("a quote inside a field that does not begin with one");
      }
      at++;
    }
    return text.substring(start, at);
  }

  private String quoted() {
    int start = ++at;
    int close = text.indexOf('"', at);
    while (close >= 0 && close + 1 < text.length() && text.charAt(close + 1) == '"') {
      close = text.indexOf('"', close + 2);
    }
    if (close < 0) {
      throw bad("a quoted field is not closed");
    }
    String field = text.substring(start, close).replace("\"\"", "\"");
    line += (int) field.chars().filter(c -> c == '\n').count();
    at = close + 1;
    return field;
  }

  private void endOfLine() {
    if (peek() == '\r') {
      at++;
    }
    if (at < text.length() && text.charAt(at) != '\n') {
      throw bad("a field ends neither with a comma nor with the line");
    }
    at++;
    line++;
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : '\n';
  }

  private BadTable bad(String message) {
    return new BadTable(table, line, "", message);
  }
}
