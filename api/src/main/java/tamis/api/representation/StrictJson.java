package tamis.api.representation;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.core.StreamReadConstraints;
import java.io.IOException;
import java.nio.ByteBuffer;
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

  private StrictJson() {}

  /**
   * The value that the bytes stand for: a map, list, text, number, boolean, or null for {@code
   * null}.
   *
   * @throws Refusal with all faults
   */
  public static @Nullable Object tree(byte[] utf8, JsonLimits limits) {
    refuseOtherEncodings(utf8);
    Faults faults = new Faults();
    @Nullable Object value;
    try (JsonParser parser = FACTORY.createParser(utf8)) {
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
      throw notJson(utf8, offset, offset >= utf8.length ? "it ends too early" : "not readable");
    } catch (IOException impossible) {
      throw new IllegalStateException("bytes in memory cannot fail to be read", impossible);
    }
    faults.refuseIfAny();
    return value;
  }

  private static void refuseOtherEncodings(byte[] bytes) {
    boolean ascii = true;
    for (byte one : bytes) {
      if (one == 0) {
        throw Refusal.of(FaultCode.NOT_UTF8, "the body holds a zero byte: it is no JSON in UTF-8");
      }
      ascii &= one > 0;
    }
    if (!ascii && PercentText.utf8(ByteBuffer.wrap(bytes)) == null) {
      throw Refusal.of(FaultCode.NOT_UTF8, "the body has bytes that are no UTF-8");
    }
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
