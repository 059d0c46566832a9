package tamis.api.representation;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Builds the tree from a parser; faults are gathered and the reading goes on behind them. */
record JsonTree(JsonParser parser, JsonLimits limits, Faults faults) {
  /** Doubles keep every number of so many digits: they are written back as they came. */
  private static final int DIGITS_OF_A_DOUBLE = 15;

  private static final int DIGITS_OF_A_LONG = 18;

  /** A text with half a surrogate pair, which UTF-8 cannot hold. */
  static final class LoneSurrogate extends RuntimeException {
    private static final long serialVersionUID = 1L;
    private final long offset;

    LoneSurrogate(long offset) {
      super(null, null, false, false);
      this.offset = offset;
    }

    long offset() {
      return offset;
    }
  }

  /** The value that begins at the current token. */
  @Nullable Object value(int depth) throws IOException {
    JsonToken token = parser.currentToken();
    if (token.isStructStart() && depth > limits.depth()) {
      faults.add(
          new Fault(
              FaultCode.TOO_DEEP,
              here(),
              null,
              "at most " + limits.depth() + " levels",
              "objects and lists nest deeper than " + limits.depth() + " levels"));
      parser.skipChildren();
      return null;
    }
    return switch (token) {
      case START_OBJECT -> object(depth);
      case START_ARRAY -> list(depth);
      case VALUE_STRING -> text();
      case VALUE_NUMBER_INT, VALUE_NUMBER_FLOAT -> number();
      case VALUE_TRUE -> true;
      case VALUE_FALSE -> false;
      default -> null;
    };
  }

  private Map<String, @Nullable Object> object(int depth) throws IOException {
    Map<String, @Nullable Object> map = new LinkedHashMap<>();
    while (parser.nextToken() == JsonToken.FIELD_NAME) {
      String name = whole(parser.currentName());
      parser.nextToken();
      int before = map.size();
      map.put(name, value(depth + 1));
      if (map.size() == before) {
        faults.add(FaultCode.DUPLICATE_NAME, here(), "`" + name + "` stands twice in one object");
      }
    }
    return map;
  }

  private List<@Nullable Object> list(int depth) throws IOException {
    List<@Nullable Object> list = new ArrayList<>();
    while (parser.nextToken() != JsonToken.END_ARRAY) {
      list.add(value(depth + 1));
    }
    return list;
  }

  private String text() throws IOException {
    return whole(parser.getText());
  }

  private String whole(String text) {
    for (int i = 0; i < text.length(); i++) {
      if (Character.isSurrogate(text.charAt(i))) {
        int letter = text.codePointAt(i);
        if (letter < Character.MIN_SUPPLEMENTARY_CODE_POINT) {
          throw new LoneSurrogate(parser.currentTokenLocation().getByteOffset());
        }
        i++;
      }
    }
    return text;
  }

  /** Exact in any case: long or double where they hold it, else decimal. */
  private @Nullable Object number() throws IOException {
    int length = parser.getTextLength();
    int digits = digits(length);
    if (digits > limits.digits()) {
      return refused(
          FaultCode.TOO_MANY_DIGITS,
          digits + " digits",
          "at most " + limits.digits() + " digits",
          "a number of " + digits + " digits; at most " + limits.digits() + " are read");
    }
    if (parser.currentToken() == JsonToken.VALUE_NUMBER_INT && length <= DIGITS_OF_A_LONG) {
      return parser.getLongValue();
    }
    String text = parser.getText();
    double value = Double.parseDouble(text);
    boolean zero = text.chars().takeWhile(c -> c != 'e' && c != 'E').noneMatch(c -> c > '0');
    if (!Double.isFinite(value) || (value == 0 && !zero)) {
      return refused(
          FaultCode.OUT_OF_BOUNDS,
          text,
          "-1.7e308 to 1.7e308, and no closer to zero than 4.9e-324",
          "the number " + text + " is larger or smaller than any that is read");
    }
    return digits <= DIGITS_OF_A_DOUBLE ? (Object) value : new BigDecimal(text);
  }

  /** All digits, those of the exponent too. */
  private int digits(int length) throws IOException {
    if (length <= DIGITS_OF_A_DOUBLE) {
      return length;
    }
    char[] text = parser.getTextCharacters();
    int from = parser.getTextOffset();
    int digits = 0;
    for (int i = from; i < from + length; i++) {
      if (text[i] >= '0' && text[i] <= '9') {
        digits++;
      }
    }
    return digits;
  }

  private @Nullable Object refused(FaultCode code, String given, String allowed, String message) {
    faults.add(new Fault(code, here(), given, allowed, message));
    return null;
  }

  /** The place that is being read; worked out only when it is to be told. */
  private String here() {
    return parser.getParsingContext().pathAsPointer().toString();
  }
}
