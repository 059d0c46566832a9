package tamis.plugin.timeline;

import java.time.DayOfWeek;
import java.time.LocalDateTime;
import java.time.Month;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneOffsetTransitionRule;
import java.time.zone.ZoneRules;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;

/** A time zone as a calendar tells it (RFC 5545, section 3.6.5), by its yearly rules if it has. */
final class CalendarZone {
  private final ZoneId zone;
  private final ZoneRules rules;
  private final CalendarLines lines;

  CalendarZone(ZoneId zone, CalendarLines lines) {
    this.zone = zone;
    this.rules = zone.getRules();
    this.lines = lines;
  }

  void write(LocalDateTime start, LocalDateTime finish) {
    lines.add("BEGIN", "VTIMEZONE");
    lines.add("TZID", zone.getId());
    if (rules.getTransitionRules().isEmpty()) {
      changes(start, finish);
    }
    for (ZoneOffsetTransitionRule rule : rules.getTransitionRules()) {
      ZoneOffsetTransition onset = rule.createTransition(start.getYear() - 1);
      observance(onset, yearly(rule));
    }
    lines.add("END", "VTIMEZONE");
  }

  /** Without yearly rules: what holds at the start, and every change up to the finish. */
  private void changes(LocalDateTime start, LocalDateTime finish) {
    ZoneOffset first = rules.getOffset(start);
    observance(false, LocalDateTime.of(1970, 1, 1, 0, 0), first, first, "");
    @Nullable ZoneOffsetTransition change = rules.nextTransition(start.atZone(zone).toInstant());
    while (change != null && !change.getInstant().isAfter(finish.atZone(zone).toInstant())) {
      observance(change, "");
      change = rules.nextTransition(change.getInstant());
    }
  }

  private static String yearly(ZoneOffsetTransitionRule rule) {
    int day = rule.getDayOfMonthIndicator();
    @Nullable DayOfWeek weekday = rule.getDayOfWeek();
    String month = "FREQ=YEARLY;BYMONTH=" + rule.getMonth().getValue();
    if (weekday == null) {
      return month + ";BYMONTHDAY=" + day;
    }
    String name = weekday.name().substring(0, 2);
    boolean last = rule.getMonth() != Month.FEBRUARY && day + 6 == rule.getMonth().maxLength();
    if (day == -1 || last) {
      return month + ";BYDAY=-1" + name;
    }
    String days =
        IntStream.range(day, day + 7).mapToObj(String::valueOf).collect(Collectors.joining(","));
    return day % 7 == 1
        ? month + ";BYDAY=" + (day / 7 + 1) + name
        : month + ";BYDAY=" + name + ";BYMONTHDAY=" + days;
  }

  private void observance(ZoneOffsetTransition change, String rule) {
    boolean summer = rules.isDaylightSavings(change.getInstant());
    observance(
        summer,
        change.getDateTimeBefore(),
        change.getOffsetBefore(),
        change.getOffsetAfter(),
        rule);
  }

  private void observance(
      boolean summer, LocalDateTime onset, ZoneOffset from, ZoneOffset to, String rule) {
    String kind = summer ? "DAYLIGHT" : "STANDARD";
    lines.add("BEGIN", kind);
    lines.add("DTSTART", CalendarLines.LOCAL.format(onset));
    lines.add("TZOFFSETFROM", offset(from));
    lines.add("TZOFFSETTO", offset(to));
    if (!rule.isEmpty()) {
      lines.add("RRULE", rule);
    }
    lines.add("END", kind);
  }

  private static String offset(ZoneOffset offset) {
    int seconds = Math.abs(offset.getTotalSeconds());
    String sign = offset.getTotalSeconds() < 0 ? "-" : "+";
    String rest = seconds % 60 == 0 ? "" : String.format(Locale.ROOT, "%02d", seconds % 60);
    return String.format(Locale.ROOT, "%s%02d%02d", sign, seconds / 3600, seconds / 60 % 60) + rest;
  }
}
