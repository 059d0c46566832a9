package tamis.engine.record;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/**
 * Reads a described record from plain values (maps, lists, texts, numbers, booleans) as a JSON
 * body, a query or a program gives them. Every fault is told with its place; nothing is skipped,
 * guessed or filled in.
 *
 * @param textual numbers and flags may come as text, as they do in a query
 * @param decimalComma a comma between digits of a number or quantity is its decimal mark
 */
public record RecordReader(
    References references, Limits limits, boolean textual, boolean decimalComma) {

  /** A reader of bodies. */
  public RecordReader(References references, Limits limits) {
    this(references, limits, false, false);
  }

  /**
   * @throws Refusal with all faults
   */
  public <T extends Record> T read(Class<T> type, @Nullable Object tree) {
    Reading reading = new Reading(this, new Place(), new Faults());
    @Nullable Object value = reading.value(new Form.Nested(type), null, tree);
    reading.faults().refuseIfAny();
    return type.cast(Objects.requireNonNull(value));
  }

  /** Escapes a name for use in a JSON Pointer. */
  public static String escaped(String name) {
    boolean plain = name.indexOf('~') < 0 && name.indexOf('/') < 0;
    return plain ? name : name.replace("~", "~0").replace("/", "~1");
  }
}
