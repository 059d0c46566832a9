package tamis.api.representation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Component;
import tamis.engine.record.Shape;

/** Figures that are not known, or known in part: never given as if they were whole. */
final class Incomplete {
  private static final String COMPONENT = "incomplete";

  private Incomplete() {}

  static Refusal absent(String pointer) {
    return refusal(pointer, "is not known");
  }

  /** The fault of a figure that the result itself calls incomplete, or null. */
  static @Nullable Refusal inPart(Record result, String pointer) {
    @Nullable Component component = Shape.of(result.getClass()).component(COMPONENT);
    if (component != null && component.of(result) instanceof List<?> pointers) {
      for (Object one : pointers) {
        if (pointer.equals(one) || pointer.startsWith(one + "/")) {
          return refusal(pointer, "is known in part only");
        }
      }
    }
    return null;
  }

  private static Refusal refusal(String pointer, String why) {
    return new Refusal(
        new Fault(
            FaultCode.INCOMPLETE,
            "/pick",
            pointer,
            "partial=yes",
            "`" + pointer + "` " + why + "; say partial=yes to be given what is known"));
  }
}
