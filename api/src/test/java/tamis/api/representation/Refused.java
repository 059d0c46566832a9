package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;

/** What a call was refused for. */
final class Refused {
  private Refused() {}

  static List<Fault> faults(ThrowingCallable call) {
    Refusal refusal = catchThrowableOfType(Refusal.class, call);
    assertThat(refusal).as("refusal").isNotNull();
    return refusal.faults();
  }

  /** Code and place of each fault: {@code out-of-bounds /mass}. */
  static List<String> at(ThrowingCallable call) {
    return faults(call).stream().map(fault -> fault.code() + " " + fault.pointer()).toList();
  }

  static Fault only(ThrowingCallable call) {
    List<Fault> faults = faults(call);
    assertThat(faults).hasSize(1);
    return faults.get(0);
  }
}
