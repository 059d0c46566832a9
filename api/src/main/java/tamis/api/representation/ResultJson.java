package tamis.api.representation;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.StreamWriteConstraints;
import java.io.IOException;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Shape;
import tamis.engine.spi.Answer;

/** Writes JSON. */
public final class ResultJson {
  private static final JsonFactory FACTORY =
      JsonFactory.builder()
          .streamWriteConstraints(StreamWriteConstraints.builder().maxNestingDepth(200).build())
          .build();

  private ResultJson() {}

  /**
   * A described record, a list, map, text, number, flag, constant or null. Of a document that was
   * read, the bytes are read as an equal one.
   *
   * @throws Refusal {@code failed} if a number is not finite, with its pointer
   */
  public static byte[] bytes(@Nullable Object value) {
    return written(true, writer -> writer.any(value));
  }

  /**
   * The answer of a calculation with its remarks and sources. What is picked stands beside the
   * result as {@code picked}, so that the result keeps its shape.
   *
   * @throws Refusal if there is nothing to pick, or a number is not finite
   */
  public static byte[] answer(
      String calculation, Answer<?> answer, long revision, Options options) {
    return written(
        false,
        writer -> {
          JsonGenerator json = writer.json();
          json.writeStartObject();
          json.writeStringField("calculation", calculation);
          json.writeFieldName("result");
          result(writer, answer.result());
          String pick = options.pick();
          if (pick != null) {
            picked(writer, Incomplete.checked(answer.result(), pick, options));
          }
          json.writeFieldName("remarks");
          writer.any(answer.remarks());
          if (options.sources()) {
            json.writeFieldName("sources");
            writer.any(answer.sources());
          }
          json.writeNumberField("revision", revision);
          json.writeEndObject();
        });
  }

  private static void result(JsonWriter writer, Record result) throws IOException {
    writer.json().writeStartObject();
    try {
      writer.components(result);
    } catch (Refusal refusal) {
      throw refusal.under("/result");
    }
    if (Bill.isAddedTo(Shape.of(result.getClass()))) {
      writer.json().writeFieldName(Bill.NAME);
      writer.any(Bill.of(result));
    }
    writer.json().writeEndObject();
  }

  private static void picked(JsonWriter writer, Pick pick) throws IOException {
    @Nullable Object value = pick.value();
    writer.json().writeFieldName("picked");
    if (value == null) {
      writer.json().writeNull();
    } else {
      writer.value(pick.form(), value);
    }
  }

  /** One writing; memory does not fail, so an I/O fault cannot be. */
  private interface Writing {
    void to(JsonWriter writer) throws IOException;
  }

  private static byte[] written(boolean exact, Writing writing) {
    Capped bytes = new Capped(Capped.MOST);
    try (JsonGenerator json = FACTORY.createGenerator(bytes)) {
      json.disable(JsonGenerator.Feature.AUTO_CLOSE_JSON_CONTENT);
      writing.to(new JsonWriter(json, exact));
      json.flush();
    } catch (IOException impossible) {
      throw new IllegalStateException("bytes in memory cannot fail to be written", impossible);
    }
    return bytes.whole();
  }
}
