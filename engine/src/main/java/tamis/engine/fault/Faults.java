package tamis.engine.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Gathers faults so that all of them can be told at once. Not for use by several threads. */
public final class Faults {
  private final List<Fault> gathered = new ArrayList<>();

  public void add(Fault fault) {
    gathered.add(fault);
  }

  public void add(FaultCode code, String pointer, String message) {
    gathered.add(Fault.of(code, pointer, message));
  }

  public void addAll(Refusal refusal, String prefix) {
    refusal.faults().forEach(f -> gathered.add(f.under(prefix)));
  }

  /** Runs {@code step}; its faults are gathered under {@code prefix} and null is its value. */
  public <T> @Nullable T gather(String prefix, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      addAll(refusal, prefix);
      return null;
    }
  }

  public boolean isEmpty() {
    return gathered.isEmpty();
  }

  public int size() {
    return gathered.size();
  }

  /**
   * @throws Refusal with all that was gathered, if anything was
   */
  public void refuseIfAny() {
    if (!gathered.isEmpty()) {
      throw new Refusal(gathered);
    }
  }
}
