package tamis.plugin.costing;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;

/** What several inputs refuse alike. */
final class Refusals {
  private Refusals() {}

  static void negative(@Nullable Money money, String pointer) {
    if (money != null && money.amount().signum() < 0) {
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              pointer,
              money.toString(),
              "0 or more",
              "must be 0 or more, was " + money));
    }
  }
}
