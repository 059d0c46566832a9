package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;

/** Cuts a table into rows and cells: RFC 4180, with a comma, a semicolon or a tab between cells. */
final class CsvRows {
  private final String text;
  private final char separator;
  private int at;

  CsvRows(String text) {
    this.text = text.startsWith("\uFEFF") ? text.substring(1) : text;
    this.separator = separator(this.text);
  }

  /** What separates the cells of the heading. */
  private static char separator(String text) {
    int end = text.indexOf('\n') < 0 ? text.length() : text.indexOf('\n');
    String heading = text.substring(0, end);
    char found = ',';
    for (char candidate : new char[] {';', '\t'}) {
      if (count(heading, candidate) > count(heading, found)) {
        found = candidate;
      }
    }
    return found;
  }

  private static long count(String text, char c) {
    return text.chars().filter(letter -> letter == c).count();
  }

  List<List<String>> all() {
    List<List<String>> rows = new ArrayList<>();
    while (at < text.length()) {
      rows.add(row());
    }
    return rows;
  }

  private List<String> row() {
    List<String> cells = new ArrayList<>();
    while (true) {
      cells.add(peek() == '"' ? quoted() : bare());
      if (peek() == separator) {
        at++;
        continue;
      }
      while (at < text.length() && (peek() == '\r' || peek() == '\n')) {
        boolean line = peek() == '\n';
        at++;
        if (line) {
          break;
        }
      }
      return cells;
    }
  }

  private String bare() {
    int start = at;
    while (at < text.length() && peek() != separator && peek() != '\n' && peek() != '\r') {
      at++;
    }
    return text.substring(start, at);
  }

  /** A quote that is never closed takes the rest of the text: no cell of it is lost. */
  private String quoted() {
    StringBuilder cell = new StringBuilder();
    at++;
    while (at < text.length()) {
      char c = text.charAt(at++);
      if (c != '"') {
        cell.append(c);
      } else if (peek() == '"') {
        cell.append('"');
        at++;
      } else {
        return cell + bare();
      }
    }
    return cell.toString();
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : '\0';
  }
}
