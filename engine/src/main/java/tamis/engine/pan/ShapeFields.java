package tamis.engine.pan;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Length;

/** Which dimensions were given, and whether they are those that a shape has. */
final class ShapeFields {
  private final Map<String, Length> given = new LinkedHashMap<>();

  /**
   * @param names of the dimensions
   * @param lengths in the same order; null where none was given
   */
  ShapeFields(List<String> names, @Nullable Length... lengths) {
    for (int i = 0; i < lengths.length; i++) {
      Length length = lengths[i];
      if (length != null) {
        given.put(names.get(i), length);
      }
    }
  }

  boolean isEmpty() {
    return given.isEmpty();
  }

  boolean hasAll(List<String> names) {
    return given.keySet().containsAll(names);
  }

  /** A fault for each dimension that {@code shape} does not have. */
  void refuseForeign(String shape, List<String> needed, List<String> optional, Faults faults) {
    List<String> allowed = new ArrayList<>(needed);
    allowed.addAll(optional);
    String known = String.join(", ", allowed);
    given.forEach(
        (name, length) -> {
          if (!allowed.contains(name)) {
            faults.add(
                new Fault(
                    FaultCode.NOT_ALLOWED,
                    "/" + name,
                    length.toString(),
                    known,
                    "a " + shape + " has no `" + name + "`; it takes " + known));
          }
        });
  }

  /** A fault for each dimension that {@code shape} needs and that was not given. */
  void refuseMissing(String shape, List<String> needed, Faults faults) {
    String known = String.join(", ", needed);
    for (String name : needed) {
      if (!given.containsKey(name)) {
        faults.add(
            new Fault(
                FaultCode.MISSING,
                "/" + name,
                null,
                known,
                "`" + name + "` is missing: a " + shape + " needs " + known));
      }
    }
  }
}
