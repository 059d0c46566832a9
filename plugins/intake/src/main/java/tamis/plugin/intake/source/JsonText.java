package tamis.plugin.intake.source;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.JsonLocation;
import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadConstraints;
import com.fasterxml.jackson.core.exc.StreamConstraintsException;
import com.fasterxml.jackson.core.json.JsonReadFeature;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;

/** JSON as it stands in pages of the web: maps, lists, texts, numbers and flags. */
public final class JsonText {
  private static final int DEEPEST = 64;
  private static final int LONGEST_NUMBER = 40;

  private static final JsonMapper JSON =
      JsonMapper.builder(
              JsonFactory.builder()
                  .streamReadConstraints(
                      StreamReadConstraints.builder()
                          .maxNestingDepth(DEEPEST)
                          .maxNumberLength(LONGEST_NUMBER)
                          .build())
                  // Pages often break lines inside a text; nothing is lost by it.
                  .enable(JsonReadFeature.ALLOW_UNESCAPED_CONTROL_CHARS)
                  .build())
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .addModule(new SimpleModule().addSerializer(new Plain()))
          .build();

  private static final DefaultPrettyPrinter LINES =
      new DefaultPrettyPrinter(
              Separators.createDefaultInstance()
                  .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                  .withObjectEmptySeparator("")
                  .withArrayEmptySeparator(""))
          .withObjectIndenter(new DefaultIndenter("  ", "\n"))
          .withArrayIndenter(new DefaultIndenter("  ", "\n"));

  private JsonText() {}

  /** The text is no JSON. */
  public static final class Broken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Broken(String message) {
      super(message, null, false, false);
    }
  }

  /** {@code 2}, not {@code 2.0}. */
  private static final class Plain extends StdSerializer<Double> {
    private static final long serialVersionUID = 1L;

    Plain() {
      super(Double.class);
    }

    @Override
    public void serialize(Double number, JsonGenerator json, SerializerProvider with)
        throws IOException {
      json.writeNumber(Bounds.plain(number));
    }
  }

  /**
   * @throws Broken if it is no JSON, or nests too deep
   */
  public static @Nullable Object parse(String text) {
    try {
      return JSON.readValue(text.startsWith("\uFEFF") ? text.substring(1) : text, Object.class);
    } catch (StreamConstraintsException large) {
      throw new Broken(
          "it nests deeper than "
              + DEEPEST
              + " levels, or a number is longer than "
              + LONGEST_NUMBER
              + " digits");
    } catch (JsonProcessingException broken) {
      JsonLocation at = broken.getLocation();
      String where =
          at == null ? "" : ", at character " + at.getCharOffset() + ", line " + at.getLineNr();
      throw new Broken("it cannot be read" + where);
    }
  }

  /** Writes a tree of maps, lists, texts, numbers and flags. */
  public static String write(Object tree) {
    try {
      return JSON.writer(LINES).writeValueAsString(tree) + "\n";
    } catch (JsonProcessingException impossible) {
      throw new IllegalStateException("a tree of plain values can be written", impossible);
    }
  }
}
