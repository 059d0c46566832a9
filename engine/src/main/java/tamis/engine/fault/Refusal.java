package tamis.engine.fault;

import java.util.List;
import java.util.stream.Collectors;

/** There is no answer, and here are all the reasons. The only exception that means "bad input". */
public final class Refusal extends RuntimeException {
  private static final long serialVersionUID = 1L;
  private static final int MOST_JOINED = 100;

  @SuppressWarnings("serial") // never serialised: a refusal lives within one request
  private final List<Fault> faults;

  public Refusal(List<Fault> faults) {
    super(
        faults.stream().limit(MOST_JOINED).map(Fault::message).collect(Collectors.joining("; ")),
        null,
        false,
        false);
    if (faults.isEmpty()) {
      throw new IllegalArgumentException("a refusal needs at least one fault");
    }
    this.faults = List.copyOf(faults);
  }

  public Refusal(Fault fault) {
    this(List.of(fault));
  }

  public static Refusal of(FaultCode code, String message) {
    return new Refusal(Fault.of(code, message));
  }

  public static Refusal of(FaultCode code, String pointer, String message) {
    return new Refusal(Fault.of(code, pointer, message));
  }

  public List<Fault> faults() {
    return faults;
  }

  /** The same refusal seen from further out. */
  public Refusal under(String prefix) {
    return prefix.isEmpty()
        ? this
        : new Refusal(faults.stream().map(f -> f.under(prefix)).toList());
  }
}
