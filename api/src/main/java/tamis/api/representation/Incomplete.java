package tamis.api.representation;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/** Figures that are not known, or known in part: never given as if they were whole. */
final class Incomplete {
  private static final String COMPONENT = "incomplete";

  private Incomplete() {}

  /**
   * What is picked of a result.
   *
   * @throws Refusal {@code incomplete} if the result calls it so, unless the caller wants parts
   */
  static Pick checked(Record result, String pointer, Options options) {
    Pick pick = Pick.of(result, pointer);
    if (options.partial()) {
      return pick;
    }
    @Nullable Refusal inPart = inPart(result, pick.pointer());
    if (inPart != null) {
      throw inPart;
    }
    if (pick.value() == null && isFigure(pick.form())) {
      throw refusal(pick.pointer(), "is not known");
    }
    return pick;
  }

  /** Numbers and money: what is not known of them is told, not left empty. */
  private static boolean isFigure(Form form) {
    return form instanceof Form.Numeric
        || (form instanceof Form.Text text && text.type() == Money.class);
  }

  /** The fault of a figure that the result itself calls incomplete, or null. */
  private static @Nullable Refusal inPart(Record result, String pointer) {
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
