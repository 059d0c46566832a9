package tamis.plugin.timeline;

import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * One end of a shift.
 *
 * @param dateTime the local time; of a time of day, on {@link #ANY_DAY}
 * @param isDaily whether it is a time of day, for every day
 */
public record ShiftTime(LocalDateTime dateTime, boolean isDaily) {
  private static final LocalDate ANY_DAY = LocalDate.EPOCH;

  public ShiftTime {
    if (!isDaily && !Clock.isInReach(dateTime)) {
      throw new Refusal(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "",
              dateTime.toString(),
              Clock.YEARS,
              dateTime + " must be in " + Clock.YEARS));
    }
  }

  /** Reads {@code 04:00} or {@code 2026-05-01T04:00}. */
  public static ShiftTime parse(String text) {
    String given = text.strip();
    try {
      return given.indexOf('T') < 0
          ? new ShiftTime(LocalTime.parse(given).atDate(ANY_DAY), true)
          : new ShiftTime(LocalDateTime.parse(given), false);
    } catch (DateTimeException unreadable) {
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_TYPE,
              "",
              given,
              "a time of day such as 04:00, or a date-time such as 2026-05-01T04:00",
              "`"
                  + given
                  + "` is no time of day such as 04:00 and no date-time such as"
                  + " 2026-05-01T04:00"));
    }
  }

  LocalTime time() {
    return dateTime.toLocalTime();
  }

  @Override
  public String toString() {
    return isDaily ? dateTime.toLocalTime().toString() : dateTime.toString();
  }
}
