package tamis.engine.fault;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Gathers faults so that all of them can be told at once. Not for use by several threads. */
public final class Faults {
  /** More are counted only: a body of a million nulls must not fill the memory with texts. */
  private static final int MOST_KEPT = 10_000;

  private final List<Fault> gathered = new ArrayList<>();
  private int size;

  public void add(Fault fault) {
    size++;
    if (size <= MOST_KEPT) {
      gathered.add(fault);
    }
  }

  public void add(FaultCode code, String pointer, String message) {
    add(Fault.of(code, pointer, message));
  }

  public void addAll(Refusal refusal, String prefix) {
    refusal.faults().forEach(f -> add(f.under(prefix)));
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

  /** How many there were, kept or not. */
  public int size() {
    return size;
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
