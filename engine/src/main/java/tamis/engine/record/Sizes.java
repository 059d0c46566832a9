package tamis.engine.record;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Checks values against the bounds of their component. */
final class Sizes {
  private Sizes() {}

  /** Whether a list or map has as many entries as it may; if not, the fault is gathered. */
  static boolean counted(Limits limits, Component component, int count, Place at, Faults faults) {
    int most = Math.min(component.most(), limits.of(component.limit()));
    if (count > most) {
      faults.add(
          new Fault(
              FaultCode.TOO_MANY,
              at.toString(),
              count + " entries",
              "at most " + most,
              "has " + count + " entries, at most " + most + " are read"));
      return false;
    }
    if (count < component.fewest()) {
      faults.add(
          new Fault(
              FaultCode.MISSING,
              at.toString(),
              count + " entries",
              "at least " + component.fewest(),
              "needs at least " + component.fewest() + " entries, has " + count));
      return false;
    }
    return true;
  }

  /** The value if it is inside its bounds; else null, with the fault gathered. */
  static @Nullable Object bounded(
      Component component, Object value, Object tree, Place at, Faults faults) {
    @Nullable String allowed = component.range().violatedBy(value);
    if (allowed != null) {
      String said = "`" + component.name() + "` must be " + allowed + ", was " + tree;
      faults.add(
          new Fault(FaultCode.OUT_OF_BOUNDS, at.toString(), String.valueOf(tree), allowed, said));
      return null;
    }
    if (value instanceof String text && text.length() > component.most()) {
      String most = "at most " + component.most() + " characters";
      String said =
          "`" + component.name() + "` has " + text.length() + " characters, " + most + " are read";
      faults.add(new Fault(FaultCode.TOO_MANY, at.toString(), text, most, said));
      return null;
    }
    return value;
  }
}
