package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.concurrent.Callable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Asserts that an input is refused, where and why. */
final class Refusals {
  private Refusals() {}

  static void refused(Callable<?> input, FaultCode code, String pointer) {
    Refusal refusal = catchThrowableOfType(Refusal.class, input::call);
    assertThat(refusal).as("a refusal").isNotNull();
    assertThat(refusal.faults())
        .anySatisfy(
            fault -> {
              assertThat(fault.code()).isEqualTo(code);
              assertThat(fault.pointer()).isEqualTo(pointer);
              assertThat(fault.message()).isNotBlank();
            });
  }
}
