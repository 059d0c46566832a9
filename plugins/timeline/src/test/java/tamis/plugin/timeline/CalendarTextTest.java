package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tamis.plugin.timeline.Timelines.cream;
import static tamis.plugin.timeline.Timelines.formula;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.result;
import static tamis.plugin.timeline.Timelines.stage;
import static tamis.plugin.timeline.Timelines.with;

import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZonedDateTime;
import java.time.temporal.Temporal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import net.fortuna.ical4j.data.CalendarBuilder;
import net.fortuna.ical4j.model.Calendar;
import net.fortuna.ical4j.model.component.VEvent;
import net.fortuna.ical4j.model.property.DtEnd;
import net.fortuna.ical4j.model.property.DtStart;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.spi.Kitchen;

/** Calendars, read back and validated by a general library. */
class CalendarTextTest {
  private static final Map<String, Object> CREAM =
      map("formulas", List.of(cream()), "finishAt", "2026-05-01T09:00");

  private static String text(Map<String, ?> input) {
    return new CalendarText(result(input)).text();
  }

  private static Calendar read(String text) throws Exception {
    Calendar calendar = new CalendarBuilder().build(new StringReader(text));
    assertThat(calendar.validate(true).hasErrors()).isFalse();
    return calendar;
  }

  private static VEvent event(Calendar calendar, String summary) {
    return calendar.<VEvent>getComponents("VEVENT").stream()
        .filter(event -> event.getSummary().getValue().startsWith(summary))
        .findFirst()
        .orElseThrow();
  }

  private static Temporal start(VEvent event) {
    return event.<DtStart<Temporal>>getProperty("DTSTART").orElseThrow().getDate();
  }

  private static Temporal end(VEvent event) {
    return event.<DtEnd<Temporal>>getProperty("DTEND").orElseThrow().getDate();
  }

  @Test
  void each_step_is_an_event_at_its_local_time() throws Exception {
    Calendar calendar = read(text(CREAM));
    assertThat(calendar.<VEvent>getComponents("VEVENT")).hasSize(3);
    VEvent syrup = event(calendar, "syrup");
    assertThat(start(syrup)).isEqualTo(LocalDateTime.of(2026, 5, 1, 8, 38));
    assertThat(end(syrup)).isEqualTo(LocalDateTime.of(2026, 5, 1, 8, 50));
    assertThat(syrup.getLocation().getValue()).isEqualTo("stove");
    assertThat(syrup.getDescription().getValue()).isEqualTo("12 min, hands-on\nNo time to spare");
  }

  @Test
  void with_a_zone_its_rules_stand_in_the_calendar() throws Exception {
    String text =
        text(
            with(
                map(
                    "formulas",
                    List.of(formula("sour", List.of(stage("ripen", "bench", 600, false)))),
                    "finishAt",
                    "2026-03-29T08:00"),
                "zone",
                "Europe/Zurich"));
    VEvent ripen = event(read(text), "ripen");
    assertThat(((ZonedDateTime) start(ripen)).toInstant())
        .isEqualTo(Instant.parse("2026-03-28T20:00:00Z"));
    assertThat(((ZonedDateTime) end(ripen)).toInstant())
        .isEqualTo(Instant.parse("2026-03-29T06:00:00Z"));
    assertThat(text)
        .contains("BEGIN:DAYLIGHT\r\nDTSTART:20250330T020000\r\nTZOFFSETFROM:+0100")
        .contains("RRULE:FREQ=YEARLY;BYMONTH=10;BYDAY=-1SU\r\nEND:STANDARD");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "Europe/Zurich",
        "America/New_York",
        "Australia/Sydney",
        "America/Santiago",
        "Asia/Jerusalem",
        "Asia/Tokyo",
        "Africa/Casablanca",
        "Asia/Kathmandu",
        "UTC",
        "+05:30"
      })
  void every_zone_is_read_back_as_the_same_moments(String zone) throws Exception {
    for (String day :
        List.of("2026-01-15", "2026-03-08", "2026-03-29", "2026-04-05", "2026-07-01")) {
      Map<String, Object> input = with(CREAM, "finishAt", day + "T12:00", "zone", zone);
      VEvent pour = event(read(text(input)), "pour");
      ZonedDateTime local = LocalDateTime.parse(day + "T12:00").atZone(java.time.ZoneId.of(zone));
      assertThat(((ZonedDateTime) end(pour)).toInstant()).as(day).isEqualTo(local.toInstant());
    }
  }

  @Test
  void zones_without_any_change_are_told_too() throws Exception {
    String text = text(with(CREAM, "zone", "Etc/GMT-5"));
    assertThat(((ZonedDateTime) start(event(read(text), "syrup"))).toInstant())
        .isEqualTo(Instant.parse("2026-05-01T03:38:00Z"));
  }

  @Test
  void long_and_strange_names_are_escaped_and_folded() throws Exception {
    String name = "Crème; à l’anglaise, \\ cœur 🍐 ".repeat(8) + "\nsecond line\u0007";
    Map<String, Object> stage = with(stage("cook", "stove", 12, true), "title", name);
    String text =
        text(
            map(
                "formulas",
                List.of(formula("custard", List.of(stage))),
                "finishAt",
                "2026-05-01T09:00"));
    for (String line : text.split("\r\n")) {
      assertThat(line.getBytes(StandardCharsets.UTF_8).length).isLessThanOrEqualTo(75);
      assertThat(line).doesNotContain("\n").doesNotContain("\u0007");
    }
    assertThat(text).endsWith("END:VCALENDAR\r\n");
    assertThat(event(read(text), "Crème").getSummary().getValue())
        .isEqualTo(name.replace("\u0007", "") + " (custard)");
  }

  @Test
  void names_of_events_are_the_same_for_the_same_input_and_differ_within_it() throws Exception {
    List<String> once = uids(text(CREAM));
    assertThat(once).doesNotHaveDuplicates().hasSize(3).isEqualTo(uids(text(CREAM)));
    assertThat(uids(text(with(CREAM, "finishAt", "2026-05-01T09:01"))))
        .doesNotContainAnyElementsOf(once);
  }

  private static List<String> uids(String text) throws Exception {
    return read(text).<VEvent>getComponents("VEVENT").stream()
        .map(event -> event.getUid().orElseThrow().getValue())
        .toList();
  }

  /** RFC 5545, section 3.8.7.2: when the information was last revised, in UTC. */
  @Test
  void the_stamp_is_what_is_as_of_else_when_the_kitchen_was_written() {
    assertThat(text(CREAM)).contains("\r\nDTSTAMP:19700101T000000Z\r\n");
    Kitchen kitchen =
        new Pantry(
            new WrittenShelf(Instant.parse("2026-04-11T08:00:07.5Z")),
            Pantry.Fittings.of(List.of(new TimelinePlugin())));
    assertThat(new CalendarText(Timelines.answer(CREAM, kitchen).result()).text())
        .contains("\r\nDTSTAMP:20260411T080007Z\r\n");
    var asOf = with(CREAM, "asOf", "2026-05-01T08:00");
    assertThat(new CalendarText(Timelines.answer(asOf, kitchen).result()).text())
        .contains("\r\nDTSTAMP:20260501T080000Z\r\n");
  }

  /** Holds nothing, since that moment. */
  private record WrittenShelf(Instant written) implements Shelf {
    @Override
    public long revision() {
      return 7;
    }

    @Override
    public Formula formula(String id, Integer revision) {
      return null;
    }

    @Override
    public Ingredient ingredient(String id) {
      return null;
    }

    @Override
    public Set<String> ingredientsNamed(String folded) {
      return Set.of();
    }

    @Override
    public List<String> formulaIdsNear(String id) {
      return List.of();
    }
  }

  @Test
  void without_times_there_is_no_calendar() {
    Map<String, Object> net = map("activities", List.of(map("id", "A", "minutes", 4)));
    assertThatThrownBy(() -> text(net))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("give `startAt` or `finishAt`");
  }

  @Test
  void what_takes_no_time_has_no_end() throws Exception {
    Map<String, Object> net =
        map("activities", List.of(map("id", "ring", "minutes", 0)), "startAt", "2026-05-01T09:00");
    assertThat(event(read(text(net)), "ring").getProperty("DTEND")).isEmpty();
  }
}
