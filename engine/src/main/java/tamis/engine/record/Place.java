package tamis.engine.record;

import java.util.Arrays;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/**
 * Where a reading stands in the input. It becomes a JSON Pointer only when a fault is told: nearly
 * all values have none.
 */
final class Place {
  /** Names, and numbers of entries. */
  private Object[] steps = new Object[16];

  private int depth;

  void in(Object step) {
    if (depth == steps.length) {
      steps = Arrays.copyOf(steps, 2 * depth);
    }
    steps[depth++] = step;
  }

  void out() {
    depth--;
  }

  /** The value of a step; its faults are gathered as standing here, and null is its value. */
  <T> @Nullable T gather(Faults faults, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      faults.addAll(refusal, toString());
      return null;
    }
  }

  /** The pointer of what stands under a name here. */
  String of(String name) {
    return this + "/" + RecordReader.escaped(name);
  }

  /** The JSON Pointer. */
  @Override
  public String toString() {
    StringBuilder pointer = new StringBuilder();
    for (int i = 0; i < depth; i++) {
      pointer.append('/').append(RecordReader.escaped(steps[i].toString()));
    }
    return pointer.toString();
  }
}
