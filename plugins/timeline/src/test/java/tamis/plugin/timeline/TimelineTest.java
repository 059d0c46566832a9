package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.timeline.Timelines.cream;
import static tamis.plugin.timeline.Timelines.formula;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.stage;
import static tamis.plugin.timeline.Timelines.step;
import static tamis.plugin.timeline.Timelines.with;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class TimelineTest extends CalculationContract<Timeline.Input, Timeline.Result> {
  private static final Map<String, Object> CREAM =
      map("formulas", List.of(cream()), "finishAt", "2026-05-01T09:00");

  @Override
  protected Calculation<Timeline.Input, Timeline.Result> calculation() {
    return new Timeline();
  }

  @Override
  protected Plugin plugin() {
    return new TimelinePlugin();
  }

  @Test
  void stages_that_meet_finish_together_and_all_is_ready_in_time() {
    Timeline.Result result = Timelines.result(CREAM);
    assertThat(result.finish()).isEqualTo("2026-05-01T09:00");
    assertThat(step(result, "syrup").start()).isEqualTo("2026-05-01T08:38");
    assertThat(step(result, "syrup").finish()).isEqualTo("2026-05-01T08:50");
    assertThat(step(result, "foam").finish()).isEqualTo("2026-05-01T08:50");
    assertThat(result.minutes()).isEqualTo(22);
    assertThat(result.criticalPath()).containsExactly("cream/syrup", "cream/pour");
    assertThat(result.cautions()).singleElement().asString().contains("hot sugar");
  }

  @Test
  void forwards_it_takes_as_long_as_backwards() {
    Timeline.Result forward =
        Timelines.result(map("formulas", List.of(cream()), "startAt", "2026-05-01T08:00"));
    assertThat(forward.minutes()).isEqualTo(Timelines.result(CREAM).minutes());
    assertThat(forward.start()).isEqualTo("2026-05-01T08:00");
    assertThat(forward.finish()).isEqualTo("2026-05-01T08:22");
  }

  @Test
  void activities_have_clock_times_when_a_time_is_given() {
    Map<String, Object> input =
        map(
            "activities",
            List.of(
                map("id", "A", "minutes", 4), map("id", "B", "minutes", 6, "after", List.of("A"))),
            "finishAt",
            "2026-05-01T09:00");
    assertThat(step(Timelines.result(input), "A").start()).isEqualTo("2026-05-01T08:50");
    assertThat(step(Timelines.result(input), "B").finish()).isEqualTo("2026-05-01T09:00");
  }

  @Test
  void parts_are_ready_before_the_stage_of_the_line_that_uses_them() {
    Map<String, Object> cake =
        with(
            formula(
                "cake",
                List.of(
                    stage("bake", "oven", 30, false),
                    stage("fill", "bench", 10, true, "after", List.of("bake")))),
            "lines",
            List.of(
                map("ingredient", "water", "quantity", "1 kg"),
                map("formula", cream(), "quantity", "500 g", "stage", "fill")));
    Timeline.Result result =
        Timelines.result(map("formulas", List.of(cake), "finishAt", "2026-05-01T09:00"));
    assertThat(step(result, "fill").start()).isEqualTo("2026-05-01T08:50");
    assertThat(step(result, "pour").finish()).isEqualTo("2026-05-01T08:50");
    assertThat(step(result, "bake").start()).isEqualTo("2026-05-01T08:20");
    assertThat(step(result, "pour").id()).isEqualTo("cake/cream/pour");
  }

  @Test
  void loads_follow_one_another_in_one_oven_and_share_two() {
    Map<String, Object> bake =
        formula(
            "buns",
            List.of(
                stage("shape", "bench", 1, true, "per", "piece"),
                stage(
                    "bake",
                    "oven",
                    20,
                    false,
                    "after",
                    List.of("shape"),
                    "per",
                    "load",
                    "load",
                    "20 each")));
    Map<String, Object> input = map("formulas", List.of(bake), "startAt", "2026-05-01T04:00");
    Timeline.Result one = Timelines.result(input);
    assertThat(step(one, "shape").minutes()).isEqualTo(60);
    assertThat(one.steps()).filteredOn(s -> "bake".equals(s.stage())).hasSize(3);
    assertThat(one.minutes()).isEqualTo(120);
    assertThat(one.boundBy()).containsExactly("oven");
    Timeline.Result two =
        Timelines.result(with(input, "stations", List.of(map("name", "Oven", "capacity", 2))));
    assertThat(two.minutes()).isEqualTo(100);
  }

  @Test
  void pieces_on_trays_are_counted_as_pieces_not_as_trays() {
    Map<String, Object> tray = map("pan", "rectangle-13x9x2-in", "count", 2);
    Map<String, Object> buns =
        with(
            formula("buns", List.of(stage("shape", "bench", 1, true, "per", "piece"))),
            "yield",
            map("pieces", 24, "pans", List.of(tray)),
            "to",
            map("pans", List.of(with(tray, "count", 4))));
    Timeline.Result result =
        Timelines.result(map("formulas", List.of(buns), "startAt", "2026-05-01T04:00"));
    assertThat(result.minutes()).isEqualTo(48);
  }

  @Test
  void batches_and_sizes_multiply_the_work() {
    Map<String, Object> buns =
        formula("buns", List.of(stage("shape", "bench", 1, true, "per", "piece")));
    Map<String, Object> twice = with(buns, "to", map("factor", 2), "count", 3);
    Timeline.Result result =
        Timelines.result(map("formulas", List.of(twice), "startAt", "2026-05-01T04:00"));
    assertThat(result.steps())
        .extracting(Step::id)
        .containsExactly("buns/batch-1/shape", "buns/batch-2/shape", "buns/batch-3/shape");
    assertThat(result.minutes()).isEqualTo(3 * 120);
    assertThat(
            Timelines.result(
                    with(
                        map("formulas", List.of(twice), "startAt", "2026-05-01T04:00"), "cooks", 3))
                .minutes())
        .isEqualTo(120);
  }

  @Test
  void what_makes_it_longer_is_named() {
    List<Map<String, Object>> stages =
        List.of(stage("one", "bench", 20, true), stage("other", "stove", 20, true));
    Map<String, Object> input =
        map("formulas", List.of(formula("two", stages)), "finishAt", "2026-05-01T09:00");
    assertThat(Timelines.result(input).minutes()).isEqualTo(40);
    assertThat(Timelines.result(input).boundBy()).containsExactly("hands");
    assertThat(Timelines.answer(input).remarks())
        .filteredOn(remark -> remark.code().equals("bound-by"))
        .singleElement()
        .extracting(Remark::message)
        .isEqualTo(
            "bound by hands: 40 min, where the stages alone, without waiting for hands or"
                + " stations, would take 20 min");
    assertThat(Timelines.result(with(input, "cooks", 2)).minutes()).isEqualTo(20);
    assertThat(Timelines.result(with(input, "cooks", 2)).boundBy()).isEmpty();
  }

  @Test
  void hands_work_inside_shifts_and_rests_lie_outside() {
    List<Map<String, Object>> stages =
        List.of(
            stage("mix", "mixer", 30, true),
            stage("rise", "bench", 600, false, "after", List.of("mix")),
            stage("shape", "bench", 30, true, "after", List.of("rise")));
    Map<String, Object> input =
        map(
            "formulas", List.of(formula("dough", stages)),
            "finishAt", "2026-05-02T06:00",
            "shifts", List.of(map("from", "05:00", "to", "13:00")));
    Timeline.Result result = Timelines.result(input);
    assertThat(step(result, "shape").start()).isEqualTo("2026-05-02T05:30");
    assertThat(step(result, "rise").start()).isEqualTo("2026-05-01T19:30");
    assertThat(step(result, "mix").finish()).isEqualTo("2026-05-01T13:00");
  }

  @Test
  void a_night_shift_goes_past_midnight() {
    Map<String, Object> input =
        map(
            "formulas", List.of(formula("mix", List.of(stage("mix", "mixer", 240, true)))),
            "finishAt", "2026-05-02T09:00",
            "shifts", List.of(map("from", "22:00", "to", "03:00")));
    assertThat(Timelines.result(input).finish()).isEqualTo("2026-05-02T03:00");
    assertThat(Timelines.result(input).start()).isEqualTo("2026-05-01T23:00");
  }

  @Test
  void a_longest_wait_holds_back_what_comes_before() {
    List<Map<String, Object>> stages =
        List.of(
            stage("whip", "mixer", 10, false, "within", "5 min"),
            stage("roast", "oven", 60, false),
            stage("fold", "bench", 5, true, "after", List.of("whip", "roast")));
    Timeline.Result result =
        Timelines.result(
            map("formulas", List.of(formula("f", stages)), "startAt", "2026-05-01T08:00"));
    assertThat(step(result, "whip").start()).isEqualTo("2026-05-01T08:45");
  }

  @Test
  void a_day_on_which_clocks_change_has_as_many_hours_as_it_has() {
    Map<String, Object> input =
        map(
            "formulas",
            List.of(formula("sour", List.of(stage("ripen", "bench", 600, false)))),
            "finishAt",
            "2026-03-29T08:00");
    assertThat(Timelines.result(input).start()).isEqualTo("2026-03-28T22:00");
    assertThat(Timelines.result(with(input, "zone", "Europe/Zurich")).start())
        .isEqualTo("2026-03-28T21:00");
  }

  @Test
  void of_a_time_that_the_clocks_show_twice_the_first_is_taken_and_told() {
    Map<String, Object> input =
        with(
            map("formulas", List.of(formula("f", List.of(stage("rest", "bench", 120, false))))),
            "startAt",
            "2026-10-25T02:30",
            "zone",
            "Europe/Zurich");
    assertThat(Timelines.result(input).finish()).isEqualTo("2026-10-25T03:30");
    assertThat(Timelines.answer(input).remarks()).extracting(Remark::code).contains("shown-twice");
  }

  @Test
  void a_plan_of_very_many_steps_says_how_good_it_is() {
    List<Map<String, Object>> stages =
        List.of(
            stage("mix", "mixer", 7, true),
            stage("bake", "oven", 9, false, "after", List.of("mix")));
    Timeline.Result result =
        Timelines.result(
            map(
                "formulas",
                List.of(with(formula("b", stages), "count", 400)),
                "startAt",
                "2026-05-01T00:00"));
    assertThat(result.steps()).hasSize(800);
    assertThat(result.minutes()).isBetween(7 + 400 * 9.0, 7 + 400 * 9.0 + result.gapMinutes());
  }
}
