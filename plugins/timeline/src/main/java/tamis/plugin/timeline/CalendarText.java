package tamis.plugin.timeline;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A plan as a calendar (RFC 5545): one event a step. Local times without a zone are floating; with
 * one, the zone's rules over these days stand in the calendar.
 */
final class CalendarText {
  private final Timeline.Result result;
  private final CalendarLines lines = new CalendarLines();

  CalendarText(Timeline.Result result) {
    this.result = result;
  }

  String text() {
    @Nullable String start = result.start();
    @Nullable String finish = result.finish();
    if (start == null || finish == null) {
      throw Refusal.of(
          FaultCode.MISSING, "/startAt", "a calendar needs times: give `startAt` or `finishAt`");
    }
    lines.add("BEGIN", "VCALENDAR");
    lines.add("VERSION", "2.0");
    lines.add("PRODID", "-//Tamis//Timeline//EN");
    lines.add("CALSCALE", "GREGORIAN");
    if (result.zone() != null) {
      new CalendarZone(ZoneId.of(result.zone()), lines)
          .write(LocalDateTime.parse(start), LocalDateTime.parse(finish));
    }
    result.steps().forEach(this::event);
    lines.add("END", "VCALENDAR");
    return lines.toString();
  }

  private void event(Step step) {
    lines.add("BEGIN", "VEVENT");
    lines.add("UID", Words.key(result.key() + "/" + step.id()) + "@tamis");
    lines.add("DTSTAMP", result.stamp());
    lines.add("SEQUENCE", String.valueOf(Math.min(result.revision(), Integer.MAX_VALUE)));
    time("DTSTART", step.start());
    if (!String.valueOf(step.start()).equals(step.finish())) {
      time("DTEND", step.finish());
    }
    String of = step.formula() == null ? "" : " (" + step.formula() + ")";
    lines.add("SUMMARY", escaped(step.title() + of));
    if (step.station() != null) {
      lines.add("LOCATION", escaped(step.station()));
    }
    lines.add("DESCRIPTION", escaped(description(step)));
    lines.add("TRANSP", step.hands() ? "OPAQUE" : "TRANSPARENT");
    lines.add("END", "VEVENT");
  }

  private static String description(Step step) {
    StringBuilder words = new StringBuilder();
    words.append(Words.span(Task.micros(step.minutes())));
    words.append(step.hands() ? ", hands-on" : ", no hands needed");
    words.append(
        step.critical()
            ? "\nNo time to spare"
            : "\nLeeway: " + Words.span(Task.micros(step.spare())));
    if (step.hold() != null) {
      words.append("\nHold: ").append(step.hold());
    }
    return words.toString();
  }

  private void time(String name, @Nullable String local) {
    String zone = result.zone() == null ? "" : ";TZID=" + quoted(result.zone());
    lines.add(name + zone, CalendarLines.LOCAL.format(LocalDateTime.parse(String.valueOf(local))));
  }

  /** A zone such as {@code +05:30} stands in quotes (section 3.2). */
  private static String quoted(String zone) {
    return zone.indexOf(':') < 0 ? zone : '"' + zone + '"';
  }

  /** Text as section 3.3.11 has it; what no text may hold is left out. */
  private static String escaped(String value) {
    return value
        .replace("\\", "\\\\")
        .replace(";", "\\;")
        .replace(",", "\\,")
        .replace("\r\n", "\\n")
        .replace("\n", "\\n")
        .replaceAll("[\\p{Cntrl}&&[^\\t]]", "");
  }

  /** When the plan's documents were written, as a calendar says it. */
  static String stamp(Instant written) {
    return CalendarLines.LOCAL.format(written.atOffset(ZoneOffset.UTC)) + "Z";
  }
}
