package tamis.api.representation;

import java.nio.ByteBuffer;
import java.nio.CharBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Reads percent-encoded text, strictly: what cannot be decoded is refused, never replaced. */
final class PercentText {
  private PercentText() {}

  /**
   * @throws Refusal {@code not-a-query} if a percent sign is not followed by two hexadecimal
   *     digits, or the bytes are no UTF-8
   */
  static String decode(String encoded) {
    if (encoded.indexOf('%') < 0 && encoded.indexOf('+') < 0) {
      return encoded.indexOf('\uFFFD') < 0
          ? encoded
          : refuse(encoded, "has bytes that are no UTF-8");
    }
    ByteBuffer bytes = ByteBuffer.allocate(encoded.length() * 3);
    for (int i = 0; i < encoded.length(); i++) {
      char next = encoded.charAt(i);
      if (next == '%') {
        int high = i + 1 < encoded.length() ? hex(encoded.charAt(i + 1)) : -1;
        int low = i + 2 < encoded.length() ? hex(encoded.charAt(i + 2)) : -1;
        if (high < 0 || low < 0) {
          return refuse(encoded, "has a % that is not followed by two hexadecimal digits");
        }
        bytes.put((byte) (high << 4 | low));
        i += 2;
      } else if (next == '+') {
        bytes.put((byte) ' ');
      } else if (next < 0x80) {
        bytes.put((byte) next);
      } else {
        int letter = encoded.codePointAt(i);
        bytes.put(Character.toString(letter).getBytes(StandardCharsets.UTF_8));
        i += Character.charCount(letter) - 1;
      }
    }
    @Nullable String text = utf8(bytes.flip());
    return text == null ? refuse(encoded, "has bytes that are no UTF-8") : text;
  }

  /** The text, or null if the bytes are no UTF-8. */
  static @Nullable String utf8(ByteBuffer bytes) {
    try {
      CharBuffer text =
          StandardCharsets.UTF_8
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(bytes);
      return text.toString();
    } catch (CharacterCodingException broken) {
      return null;
    }
  }

  private static int hex(char digit) {
    return digit < 0x80 ? Character.digit(digit, 16) : -1;
  }

  private static String refuse(String encoded, String why) {
    throw new Refusal(
        new Fault(
            FaultCode.NOT_A_QUERY,
            "",
            encoded,
            "percent-encoded UTF-8",
            "the query " + why + ": " + shortened(encoded)));
  }

  private static String shortened(String text) {
    return text.length() <= 60 ? text : text.substring(0, 60) + "…";
  }
}
