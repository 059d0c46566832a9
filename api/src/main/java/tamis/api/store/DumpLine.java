package tamis.api.store;

import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.record.Described;
import tamis.engine.trial.Observation;

/** One line of a dump, read and checked by itself. */
final class DumpLine {
  private static final JsonLimits JSON = new JsonLimits(1_000, 1_000);

  private final String text;
  private final Map<?, ?> values;

  /** What is wrong with a line. */
  static final class Unreadable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    Unreadable(String why) {
      super(why, null, false, false);
    }
  }

  /** The first line: what is to come. */
  record Counts(
      @Described("Version of the schema") int schema,
      @Described("Revision over documents") long revision,
      @Described("Revision over trials") long trials,
      @Described("Lines that follow") long lines) {}

  private DumpLine(String text, Map<?, ?> values) {
    this.text = text;
    this.values = values;
  }

  /**
   * @throws Unreadable if it is no JSON object
   */
  static DumpLine of(byte[] line) {
    try {
      if (StrictJson.tree(line, JSON) instanceof Map<?, ?> map) {
        return new DumpLine(new String(line, StandardCharsets.UTF_8), map);
      }
    } catch (Refusal refusal) {
      throw new Unreadable(String.valueOf(refusal.getMessage()));
    }
    throw new Unreadable("is no JSON object");
  }

  String kind() {
    return text("kind");
  }

  Counts counts() {
    if (!kind().equals(Dump.STORE)) {
      throw new Unreadable("the first line must be that of a dump: {\"kind\":\"store\",…}");
    }
    return new Counts(
        (int) number("schema"), number("revision"), number("trials"), number("lines"));
  }

  /** A revision of a document. */
  Stored revision(Kind kind) {
    String id = text("id");
    @Nullable String json = document();
    return new Stored(
        id,
        (int) number("number"),
        number("revision"),
        written(),
        text("author"),
        json == null ? null : document(kind, id, json));
  }

  private static Document document(Kind kind, String id, String json) {
    try {
      Document document = Document.kept(kind, id, json);
      boolean isOther =
          document.record() instanceof Formula formula
              && formula.id() != null
              && !id.equals(formula.id());
      if (isOther) {
        throw new Unreadable("the document has another id than its line");
      }
      return document;
    } catch (Refusal refusal) {
      throw new Unreadable(String.valueOf(refusal.getMessage()));
    }
  }

  String trial() {
    return text("trial");
  }

  int number() {
    return (int) number("number");
  }

  Observed observed() {
    @Nullable String json = document();
    if (json == null) {
      throw new Unreadable("has no document");
    }
    try {
      return new Observed(
          KeptJson.record(Observation.class, json),
          number("revision"),
          written(),
          text("author"),
          false);
    } catch (Refusal refusal) {
      throw new Unreadable(String.valueOf(refusal.getMessage()));
    }
  }

  /** The document as it is written: it stands last, and no other value holds a bare quote. */
  @Nullable String document() {
    int begin = text.indexOf(Dump.DOCUMENT);
    return begin < 0 ? null : text.substring(begin + Dump.DOCUMENT.length(), text.lastIndexOf('}'));
  }

  private Instant written() {
    try {
      return Instant.parse(text("written"));
    } catch (DateTimeException unreadable) {
      throw new Unreadable("`written` must be a time such as 2026-04-11T08:10:00Z");
    }
  }

  private String text(String name) {
    if (values.get(name) instanceof String text && !text.isEmpty()) {
      return text;
    }
    throw new Unreadable("`" + name + "` is missing, or is no text");
  }

  private long number(String name) {
    if (values.get(name) instanceof Number number && number.longValue() >= 0) {
      return number.longValue();
    }
    throw new Unreadable("`" + name + "` is missing, or is no number");
  }
}
