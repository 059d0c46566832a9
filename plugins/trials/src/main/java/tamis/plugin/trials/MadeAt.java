package tamis.plugin.trials;

import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.format.DateTimeFormatter;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * When something was made: a day, or a day with its time.
 *
 * @param at the moment; of a day alone its beginning, so that nothing keeps longer than it does
 * @param timed whether a time was given
 */
public record MadeAt(LocalDateTime at, boolean timed) {
  private static final int EARLIEST = 1900;
  private static final int LATEST = 9998;
  private static final int LENGTH_OF_A_DATE = 10;
  private static final DateTimeFormatter MINUTE = DateTimeFormatter.ofPattern("uuuu-MM-dd HH:mm");

  public MadeAt {
    if (at.getYear() < EARLIEST || at.getYear() > LATEST) {
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "",
              at.toString(),
              EARLIEST + " to " + LATEST,
              "a year is " + EARLIEST + " to " + LATEST + ", was " + at.getYear()));
    }
  }

  /** Reads {@code 2026-04-11} and {@code 2026-04-11T08:10}. */
  public static MadeAt parse(String text) {
    String given = text.strip();
    return given.length() <= LENGTH_OF_A_DATE
        ? new MadeAt(LocalDate.parse(given).atStartOfDay(), false)
        : new MadeAt(LocalDateTime.parse(given), true);
  }

  /** For a person. */
  String words(LocalDateTime moment) {
    return timed ? MINUTE.format(moment) : moment.toLocalDate().toString();
  }

  @Override
  public String toString() {
    return timed ? at.toString() : at.toLocalDate().toString();
  }
}
