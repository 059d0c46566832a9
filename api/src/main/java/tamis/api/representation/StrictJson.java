package tamis.api.representation;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.VarHandle;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/**
 * Reads JSON (RFC 8259) into maps, lists, texts, numbers, booleans and nulls. Nothing is repaired:
 * a name told twice, a number too long or too large, and nesting too deep are faults, all of them
 * told at once with their places.
 */
public final class StrictJson {
  /** The limits of the parser are ours: a fault with its place, not the end of reading. */
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .disable(JsonFactory.Feature.INTERN_FIELD_NAMES)
          .streamReadConstraints(
              StreamReadConstraints.builder()
                  .maxNestingDepth(Integer.MAX_VALUE)
                  .maxNumberLength(Integer.MAX_VALUE)
                  .maxStringLength(Integer.MAX_VALUE)
                  .maxNameLength(Integer.MAX_VALUE)
                  .build())
          .build();

  private static final VarHandle EIGHT =
      MethodHandles.byteArrayViewVarHandle(long[].class, ByteOrder.nativeOrder());
  private static final long ONES = 0x0101_0101_0101_0101L;
  private static final long HIGH_BITS = 0x8080_8080_8080_8080L;

  private StrictJson() {}

  /**
   * The value that the bytes stand for: a map, list, text, number, boolean, or null for {@code
   * null}.
   *
   * @throws Refusal with all faults
   */
  public static @Nullable Object tree(byte[] utf8, JsonLimits limits) {
    return tree(utf8, utf8.length, limits);
  }

  /** The same of so many bytes at the beginning of more. */
  public static @Nullable Object tree(byte[] utf8, int length, JsonLimits limits) {
    refuseOtherEncodings(utf8, length);
    Faults faults = new Faults();
    @Nullable Object value;
    try (JsonParser parser = FACTORY.createParser(utf8, 0, length)) {
      if (parser.nextToken() == null) {
        throw Refusal.of(FaultCode.NOT_JSON, "the body is empty; JSON is wanted");
      }
      value = new JsonTree(parser, limits, faults).value(1);
      JsonToken more = parser.nextToken();
      if (more != null) {
        throw notJson(
            utf8, parser.currentTokenLocation().getByteOffset(), "something follows the JSON");
      }
    } catch (JsonTree.LoneSurrogate broken) {
      throw notJson(utf8, broken.offset(), "half a surrogate pair is no character");
    } catch (com.fasterxml.jackson.core.JsonProcessingException broken) {
      long offset = broken.getLocation() == null ? -1 : broken.getLocation().getByteOffset();
      throw notJson(utf8, offset, offset >= length ? "it ends too early" : "not readable");
    } catch (IOException impossible) {
      throw new IllegalStateException("bytes in memory cannot fail to be read", impossible);
    }
    faults.refuseIfAny();
    return value;
  }

  private static void refuseOtherEncodings(byte[] bytes, int length) {
    for (int at = 0; at < length; ) {
      if (at + Long.BYTES <= length && isPlain((long) EIGHT.get(bytes, at))) {
        at += Long.BYTES;
      } else if (bytes[at] > 0) {
        at++;
      } else if (bytes[at] == 0) {
        throw Refusal.of(FaultCode.NOT_UTF8, "the body holds a zero byte: it is no JSON in UTF-8");
      } else {
        int from = at;
        while (at < length && bytes[at] < 0) {
          at++;
        }
        if (!isUtf8(bytes, from, at - from)) {
          throw Refusal.of(FaultCode.NOT_UTF8, "the body has bytes that are no UTF-8");
        }
      }
    }
  }

  /** Whether each of eight bytes is from 1 to 127. */
  private static boolean isPlain(long eight) {
    return ((eight | (eight - ONES)) & HIGH_BITS) == 0;
  }

  /** Decoding puts U+FFFD in place of what is none; only where one is, it may have been sent. */
  private static boolean isUtf8(byte[] bytes, int from, int length) {
    return new String(bytes, from, length, StandardCharsets.UTF_8).indexOf('\uFFFD') < 0
        || PercentText.utf8(ByteBuffer.wrap(bytes, from, length)) != null;
  }

  private static Refusal notJson(byte[] utf8, long offset, String why) {
    int line = 1;
    int column = 1;
    int end = offset < 0 ? 0 : (int) Math.min(offset, utf8.length);
    for (int i = 0; i < end; i++) {
      if (utf8[i] == '\n') {
        line++;
        column = 1;
      } else if ((utf8[i] & 0xC0) != 0x80) { // bytes that continue a character are no column
        column++;
      }
    }
    return Refusal.of(
        FaultCode.NOT_JSON,
        "the body is no JSON: " + why + ", line " + line + ", column " + column);
  }
}
