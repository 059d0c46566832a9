package tamis.plugin.trials;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Component;
import tamis.engine.record.Shape;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Asks other calculations, whose classes are not known here, and reads what they answered. */
final class Asked {
  private Asked() {}

  /** The answer, or null if no calculation of this name is there. */
  static @Nullable Answer<?> of(Kitchen kitchen, String name, Map<String, ?> input) {
    try {
      return kitchen.calculate(name, input);
    } catch (Refusal refusal) {
      boolean absent =
          refusal.faults().stream().anyMatch(f -> f.code() == FaultCode.UNKNOWN_CALCULATION);
      if (absent) {
        return null;
      }
      throw refusal;
    }
  }

  /** The value at the end of these names, or null. */
  static @Nullable Object value(Record record, String... names) {
    @Nullable Object value = record;
    for (String name : names) {
      @Nullable Component component =
          value instanceof Record inner ? Shape.of(inner.getClass()).component(name) : null;
      value = component == null || !(value instanceof Record inner) ? null : component.of(inner);
    }
    return value;
  }

  static @Nullable Double number(Record record, String... names) {
    return value(record, names) instanceof Number number ? number.doubleValue() : null;
  }

  static String text(Record record, String... names) {
    @Nullable Object value = value(record, names);
    return value == null ? "" : value.toString();
  }
}
