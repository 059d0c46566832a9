package tamis.engine.table;

import java.util.ArrayList;
import java.util.List;

/** Reads RFC 4180 text: comma, quoted fields, doubled quotes, LF or CRLF. */
final class Csv {
  private final String text;
  private int at;

  private Csv(String text) {
    this.text = text;
  }

  static List<List<String>> read(String text) {
    Csv reader = new Csv(text.startsWith("\uFEFF") ? text.substring(1) : text);
    List<List<String>> records = new ArrayList<>();
    while (reader.at < reader.text.length()) {
      records.add(reader.line());
    }
    return records;
  }

  private List<String> line() {
    List<String> fields = new ArrayList<>();
    while (true) {
      fields.add(at < text.length() && text.charAt(at) == '"' ? quoted() : bare());
      if (at >= text.length()) {
        return fields;
      }
      char end = text.charAt(at++);
      if (end == '\r' && at < text.length() && text.charAt(at) == '\n') {
        at++;
        return fields;
      }
      if (end == '\n') {
        return fields;
      }
    }
  }

  private String bare() {
    int start = at;
    while (at < text.length() && ",\r\n".indexOf(text.charAt(at)) < 0) {
      at++;
    }
    return text.substring(start, at);
  }

  private String quoted() {
    StringBuilder field = new StringBuilder();
    at++;
    while (at < text.length()) {
      char next = text.charAt(at++);
      if (next != '"') {
        field.append(next);
      } else if (at < text.length() && text.charAt(at) == '"') {
        field.append('"');
        at++;
      } else {
        return field.toString();
      }
    }
    throw new IllegalArgumentException("a quoted field is not closed");
  }
}
