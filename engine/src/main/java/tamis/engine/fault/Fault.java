package tamis.engine.fault;

import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One reason why there is no answer.
 *
 * @param code which of the closed list
 * @param pointer where, as a JSON Pointer (RFC 6901) relative to the value that was read; empty for
 *     the value itself
 * @param given what was given, in the caller's own words
 * @param allowed what would have been accepted
 * @param message a sentence for a person: what was given and what is allowed
 */
public record Fault(
    FaultCode code,
    String pointer,
    @Nullable String given,
    @Nullable String allowed,
    String message) {
  private static final int LONGEST_GIVEN = 200;

  /** A message repeats what was given, and that may be as long as a body. */
  private static final int LONGEST_MESSAGE = 1_000;

  public Fault {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(pointer, "pointer");
    Objects.requireNonNull(message, "message");
    given = given == null ? null : shortened(given, LONGEST_GIVEN);
    message = shortened(message, LONGEST_MESSAGE);
  }

  public static Fault of(FaultCode code, String message) {
    return new Fault(code, "", null, null, message);
  }

  public static Fault of(FaultCode code, String pointer, String message) {
    return new Fault(code, pointer, null, null, message);
  }

  /** The same fault seen from further out: {@code prefix} is put before its pointer. */
  public Fault under(String prefix) {
    return prefix.isEmpty() ? this : new Fault(code, prefix + pointer, given, allowed, message);
  }

  private static String shortened(String text, int most) {
    if (text.length() <= most) {
      return text;
    }
    int end = Character.isHighSurrogate(text.charAt(most - 1)) ? most - 1 : most;
    return text.substring(0, end) + "…";
  }
}
