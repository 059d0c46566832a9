package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads JSON as it stands in pages of the web, into maps, lists, texts, numbers and flags. */
final class JsonText {
  private static final int DEEPEST = 64;
  private static final int LONGEST_NUMBER = 40;

  private final String text;
  private int at;

  /** The text is no JSON. */
  static final class Broken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Broken(String message) {
      super(message, null, false, false);
    }
  }

  private JsonText(String text) {
    this.text = text;
  }

  /**
   * @throws Broken if it is no JSON, or nests too deep
   */
  static @Nullable Object parse(String text) {
    JsonText reader = new JsonText(text.startsWith("\uFEFF") ? text.substring(1) : text);
    @Nullable Object value = reader.value(0);
    reader.space();
    if (reader.at < reader.text.length()) {
      throw reader.broken("something stands behind the end");
    }
    return value;
  }

  private @Nullable Object value(int depth) {
    if (depth > DEEPEST) {
      throw broken("it nests deeper than " + DEEPEST + " levels");
    }
    space();
    char c = peek();
    return switch (c) {
      case '{' -> object(depth);
      case '[' -> list(depth);
      case '"' -> string();
      case 't' -> word("true", true);
      case 'f' -> word("false", false);
      case 'n' -> word("null", null);
      default -> number();
    };
  }

  private Map<String, @Nullable Object> object(int depth) {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    at++;
    space();
    if (peek() == '}') {
      at++;
      return map;
    }
    while (true) {
      space();
      if (peek() != '"') {
        throw broken("a name in quotes is missing");
      }
      String name = string();
      space();
      expect(':');
      map.put(name, value(depth + 1));
      space();
      if (peek() == ',') {
        at++;
      } else {
        expect('}');
        return map;
      }
    }
  }

  private List<@Nullable Object> list(int depth) {
    List<@Nullable Object> list = new ArrayList<>();
    at++;
    space();
    if (peek() == ']') {
      at++;
      return list;
    }
    while (true) {
      list.add(value(depth + 1));
      space();
      if (peek() == ',') {
        at++;
      } else {
        expect(']');
        return list;
      }
    }
  }

  private String string() {
    StringBuilder string = new StringBuilder();
    at++;
    while (peek() != '"') {
      if (at >= text.length()) {
        throw broken("a text is not closed");
      }
      char c = text.charAt(at++);
      // Pages often break lines inside a text, which JSON does not allow; nothing is lost by it.
      string.append(c == '\\' ? escaped() : c);
    }
    at++;
    return string.toString();
  }

  private char escaped() {
    char c = peek();
    at++;
    return switch (c) {
      case 'n' -> '\n';
      case 't' -> '\t';
      case 'r' -> '\r';
      case 'b' -> '\b';
      case 'f' -> '\f';
      case 'u' -> code();
      case '"', '\\', '/' -> c;
      default -> throw broken("`\\" + c + "` stands for nothing");
    };
  }

  private char code() {
    if (at + 4 > text.length()) {
      throw broken("a text is not closed");
    }
    int code = 0;
    for (int i = 0; i < 4; i++) {
      int digit = Character.digit(text.charAt(at++), 16);
      if (digit < 0) {
        throw broken("a \\u needs four digits");
      }
      code = code * 16 + digit;
    }
    return (char) code;
  }

  private Double number() {
    int start = at;
    while ("+-.eE0123456789".indexOf(peek()) >= 0 && at < text.length()) {
      at++;
    }
    String number = text.substring(start, at);
    if (number.isEmpty() || number.length() > LONGEST_NUMBER) {
      throw broken("a value is missing");
    }
    try {
      double value = Double.parseDouble(number);
      if (!Double.isFinite(value)) {
        throw broken("the number " + number + " is too large");
      }
      return value;
    } catch (NumberFormatException none) {
      throw broken("`" + number + "` is no number");
    }
  }

  private @Nullable Object word(String word, @Nullable Object value) {
    if (!text.startsWith(word, at)) {
      throw broken("a value is missing");
    }
    at += word.length();
    return value;
  }

  private void expect(char c) {
    if (peek() != c || at >= text.length()) {
      throw broken("`" + c + "` is missing");
    }
    at++;
  }

  private void space() {
    while (at < text.length() && text.charAt(at) <= ' ') {
      at++;
    }
  }

  private char peek() {
    return at < text.length() ? text.charAt(at) : '\0';
  }

  private Broken broken(String why) {
    int line =
        1
            + (int)
                text.substring(0, Math.min(at, text.length()))
                    .chars()
                    .filter(c -> c == '\n')
                    .count();
    return new Broken(why + ", at character " + at + ", line " + line);
  }

  /** Writes a tree of maps, lists, texts, numbers and flags; what is null is left out of maps. */
  static String write(Object tree) {
    StringBuilder out = new StringBuilder();
    write(tree, "", out);
    return out.append('\n').toString();
  }

  private static void write(Object tree, String indent, StringBuilder out) {
    if (tree instanceof Map<?, ?> map) {
      List<String> parts = new ArrayList<>();
      map.forEach(
          (name, value) -> {
            StringBuilder part = new StringBuilder(quoted(String.valueOf(name))).append(": ");
            write(value, indent + "  ", part);
            parts.add(part.toString());
          });
      block(parts, '{', '}', indent, out);
    } else if (tree instanceof List<?> list) {
      List<String> parts = new ArrayList<>();
      for (Object value : list) {
        StringBuilder part = new StringBuilder();
        write(value, indent + "  ", part);
        parts.add(part.toString());
      }
      block(parts, '[', ']', indent, out);
    } else if (tree instanceof Double number) {
      out.append(tamis.engine.fault.Bounds.plain(number));
    } else if (tree instanceof Number || tree instanceof Boolean) {
      out.append(tree);
    } else {
      out.append(quoted(String.valueOf(tree)));
    }
  }

  private static void block(
      List<String> parts, char open, char close, String indent, StringBuilder out) {
    if (parts.isEmpty()) {
      out.append(open).append(close);
      return;
    }
    String inner = "\n" + indent + "  ";
    out.append(open).append(inner).append(String.join("," + inner, parts));
    out.append('\n').append(indent).append(close);
  }

  private static String quoted(String text) {
    StringBuilder quoted = new StringBuilder("\"");
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> quoted.append("\\\"");
        case '\\' -> quoted.append("\\\\");
        case '\n' -> quoted.append("\\n");
        case '\r' -> quoted.append("\\r");
        case '\t' -> quoted.append("\\t");
        default -> {
          if (c < ' ') {
            quoted.append(String.format("\\u%04x", (int) c));
          } else {
            quoted.append(c);
          }
        }
      }
    }
    return quoted.append('"').toString();
  }
}
