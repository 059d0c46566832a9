package tamis.plugin.orders;

import java.time.LocalDateTime;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** When something is wanted. */
final class Due {
  private Due() {}

  static void check(@Nullable LocalDateTime due, @Nullable LocalDateTime asOf) {
    if (due != null && asOf != null && due.isBefore(asOf)) {
      throw new Refusal(
          new Fault(
              FaultCode.INCONSISTENT,
              "/due",
              due.toString(),
              asOf + " or later",
              "`due` " + due + " is before now, `asOf` " + asOf));
    }
  }
}
