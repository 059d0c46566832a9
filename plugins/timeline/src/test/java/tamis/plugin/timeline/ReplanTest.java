package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.timeline.Timelines.answer;
import static tamis.plugin.timeline.Timelines.cream;
import static tamis.plugin.timeline.Timelines.faults;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.result;
import static tamis.plugin.timeline.Timelines.step;
import static tamis.plugin.timeline.Timelines.with;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;

/** Foam that takes 11 minutes, not 5, while the syrup is on the stove. */
class ReplanTest {
  private static final Map<String, Object> LATE =
      map(
          "formulas", List.of(cream()),
          "finishAt", "2026-05-01T09:00",
          "delays", List.of(map("stage", "foam", "minutes", 6)));

  @Test
  void what_had_started_stays_and_what_waits_is_held() {
    Timeline.Result result = result(LATE);
    assertThat(step(result, "foam").start()).isEqualTo("2026-05-01T08:45");
    assertThat(step(result, "foam").finish()).isEqualTo("2026-05-01T08:56");
    assertThat(step(result, "syrup").finish()).isEqualTo("2026-05-01T08:50");
    assertThat(step(result, "syrup").started()).isTrue();
    assertThat(step(result, "syrup").holdMinutes()).isEqualTo(6);
    assertThat(step(result, "syrup").hold())
        .isEqualTo("lower the heat: 6 min; it goes on cooking, so measure again before it is used");
    assertThat(step(result, "pour").started()).isFalse();
    assertThat(step(result, "pour").start()).isEqualTo("2026-05-01T08:56");
    assertThat(result.finish()).isEqualTo("2026-05-01T09:06");
    assertThat(answer(LATE).remarks())
        .extracting(Remark::message)
        .contains("ready 6 min later than planned, at 2026-05-01T09:06");
  }

  @Test
  void how_a_stage_is_held_names_its_source() {
    assertThat(answer(LATE).sources())
        .filteredOn(source -> source.table().equals("holding"))
        .singleElement()
        .satisfies(
            source -> {
              assertThat(source.row()).isEqualTo("sugar-syrup");
              assertThat(source.basis()).isEqualTo("common practice");
            });
  }

  @Test
  void a_delay_that_is_known_early_moves_what_has_not_started() {
    Timeline.Result result = result(with(LATE, "asOf", "2026-05-01T08:00"));
    assertThat(step(result, "foam").start()).isEqualTo("2026-05-01T08:39");
    assertThat(step(result, "foam").finish()).isEqualTo(step(result, "syrup").finish());
    assertThat(result.finish()).isEqualTo("2026-05-01T09:00");
    assertThat(result.steps()).extracting(Step::holdMinutes).containsOnlyNulls();
  }

  @Test
  void a_stage_of_several_formulas_needs_its_formula_named() {
    Map<String, Object> other = with(cream(), "id", "other-cream");
    Map<String, Object> two = with(LATE, "formulas", List.of(cream(), other), "cooks", 2);
    assertThat(faults(two))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.pointer()).isEqualTo("/delays/0/stage");
              assertThat(fault.allowed()).isEqualTo("cream, other-cream");
            });
    Map<String, Object> named = map("stage", "foam", "formula", "other-cream", "minutes", 6);
    assertThat(faults(with(two, "delays", List.of(named)))).isEmpty();
  }

  @Test
  void activities_are_planned_anew_too() {
    Map<String, Object> input =
        map(
            "activities",
            List.of(
                map("id", "A", "minutes", 4),
                map("id", "B", "minutes", 6, "after", List.of("A")),
                map("id", "C", "minutes", 3, "after", List.of("A"))),
            "startAt",
            "2026-05-01T08:00",
            "delays",
            List.of(map("stage", "A", "minutes", 10)));
    Timeline.Result result = result(input);
    assertThat(step(result, "B").start()).isEqualTo("2026-05-01T08:14");
    assertThat(step(result, "C").start()).isEqualTo("2026-05-01T08:14");
    assertThat(result.minutes()).isEqualTo(20);
  }
}
