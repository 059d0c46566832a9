package tamis.plugin.timeline;

import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.plugin.timeline.network.WorkingTime;

/**
 * Turns microseconds from a moment into local times and back. Without a zone every day has 24
 * hours.
 */
final class Clock {
  private static final long MICROS_PER_SECOND = 1_000_000;
  private static final int MOST_DAYS = 1_100;
  private static final int FIRST_YEAR = 1900;
  private static final int LAST_YEAR = 2999;
  static final String YEARS = "the years " + FIRST_YEAR + " to " + LAST_YEAR;

  private final ZonedDateTime origin;

  Clock(LocalDateTime origin, @Nullable Zone zone) {
    ZoneId id = zone == null ? ZoneOffset.UTC : zone.id();
    this.origin = origin.atZone(id);
  }

  /** Whether the clocks show this time, in years that a plan is made for. */
  static void check(
      String pointer, @Nullable LocalDateTime time, @Nullable Zone zone, Faults faults) {
    if (time == null) {
      return;
    }
    String name = "`" + pointer.substring(1) + "` " + time;
    if (!isInReach(time)) {
      faults.add(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              pointer,
              time.toString(),
              YEARS,
              name + " must be in " + YEARS));
    } else if (zone != null && zone.id().getRules().getValidOffsets(time).isEmpty()) {
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              pointer,
              time.toString(),
              "a time that the clocks show",
              name + " does not exist in " + zone + ": the clocks are put forward past it"));
    }
  }

  /** Whether the zone's clocks show this time twice, when they are put back. */
  static boolean isTwice(LocalDateTime time, @Nullable Zone zone) {
    return zone != null && zone.id().getRules().getValidOffsets(time).size() > 1;
  }

  static boolean isInReach(LocalDateTime time) {
    return time.getYear() >= FIRST_YEAR && time.getYear() <= LAST_YEAR;
  }

  long micros(LocalDateTime time) {
    Duration since = Duration.between(origin, time.atZone(origin.getZone()));
    return since.getSeconds() * MICROS_PER_SECOND + since.getNano() / 1_000;
  }

  /** To the second; a baker's clock shows no less. */
  String local(long micros) {
    return origin
        .plus(Duration.of(micros, ChronoUnit.MICROS))
        .plusNanos(500_000_000)
        .truncatedTo(ChronoUnit.SECONDS)
        .toLocalDateTime()
        .toString();
  }

  /** Shifts from a good while before to a good while after the work could lie. */
  WorkingTime working(List<Shift> shifts, long work, boolean backward) {
    if (shifts.isEmpty()) {
      return WorkingTime.always();
    }
    long days = Math.min(MOST_DAYS, 2 * work / (86_400 * MICROS_PER_SECOND) + 60);
    List<WorkingTime.Window> windows = new ArrayList<>();
    for (Shift shift : shifts) {
      if (!shift.from().isDaily()) {
        windows.add(
            new WorkingTime.Window(micros(shift.from().dateTime()), micros(shift.to().dateTime())));
        continue;
      }
      for (long day = backward ? -days : -1; day <= (backward ? 1 : days); day++) {
        windows.add(daily(shift, day));
      }
    }
    return WorkingTime.of(windows);
  }

  private WorkingTime.Window daily(Shift shift, long day) {
    var date = origin.toLocalDate().plusDays(day);
    boolean overnight = shift.to().time().isBefore(shift.from().time());
    return new WorkingTime.Window(
        micros(date.atTime(shift.from().time())),
        micros(date.plusDays(overnight ? 1 : 0).atTime(shift.to().time())));
  }
}
