package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.timeline.Timelines.formula;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.stage;
import static tamis.plugin.timeline.Timelines.with;

import java.time.Duration;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** What holds of every plan, on formulas made up from a seed. */
class TimelinePropertiesTest {
  private static final List<String> STATIONS = List.of("mixer", "oven", "bench", "stove");

  static LongStream seeds() {
    return LongStream.range(0, 60);
  }

  private static Map<String, Object> input(long seed) {
    Random random = new Random(seed);
    List<Map<String, Object>> formulas = new ArrayList<>();
    for (int f = 0; f < 1 + random.nextInt(3); f++) {
      List<Map<String, Object>> stages = new ArrayList<>();
      for (int s = 0; s < 3 + random.nextInt(4); s++) {
        stages.add(randomStage(random, s));
      }
      formulas.add(formula("f" + f, stages));
    }
    return map("formulas", formulas, "startAt", "2026-05-01T04:00");
  }

  private static Map<String, Object> randomStage(Random random, int s) {
    Map<String, Object> stage =
        stage(
            "s" + s,
            STATIONS.get(random.nextInt(STATIONS.size())),
            1 + random.nextInt(40),
            random.nextInt(3) == 0);
    List<String> after = new ArrayList<>();
    for (int before = 0; before < s; before++) {
      if (random.nextInt(3) == 0) {
        after.add("s" + before);
      }
    }
    stage.put("after", after);
    if (random.nextInt(4) == 0) {
      stage.put("within", 60 + random.nextInt(60) + " min");
    }
    boolean meets = s > 0 && after.isEmpty() && random.nextInt(2) == 0;
    if (meets) {
      stage.put("meets", List.of("s" + (s - 1)));
      stage.put("hands", false);
      stage.put("station", "bench");
    }
    return stage;
  }

  private static long at(String time) {
    return Duration.between(LocalDateTime.of(2026, 5, 1, 4, 0), LocalDateTime.parse(time))
        .toSeconds();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void plans_keep_order_stations_hands_meetings_and_waits(long seed) {
    for (String direction : List.of("startAt", "finishAt")) {
      Map<String, Object> input = with(input(seed));
      input.put(direction, input.remove("startAt"));
      if (!Timelines.faults(input).isEmpty()) {
        continue;
      }
      List<Step> steps = Timelines.result(input).steps();
      for (Step step : steps) {
        assertThat(at(step.finish()) - at(step.start())).isEqualTo((long) (step.minutes() * 60));
        assertBonds(input, steps, step);
        long hands = going(steps, step).stream().filter(Step::hands).count();
        assertThat(hands).as("cooks at %s", step.start()).isLessThanOrEqualTo(1);
        for (String station : List.of("mixer", "oven")) {
          assertThat(going(steps, step).stream().filter(s -> station.equals(s.station())).count())
              .as("%s at %s", station, step.start())
              .isLessThanOrEqualTo(1);
        }
      }
    }
  }

  private static List<Step> going(List<Step> steps, Step when) {
    return steps.stream()
        .filter(s -> at(s.start()) <= at(when.start()) && at(when.start()) < at(s.finish()))
        .toList();
  }

  @SuppressWarnings("unchecked")
  private static void assertBonds(Map<String, Object> input, List<Step> steps, Step step) {
    for (Map<String, Object> formula : (List<Map<String, Object>>) input.get("formulas")) {
      if (!formula.get("id").equals(step.formula())) {
        continue;
      }
      for (Map<String, Object> stage : (List<Map<String, Object>>) formula.get("stages")) {
        if (!stage.get("id").equals(step.stage())) {
          continue;
        }
        for (String name : (List<String>) stage.get("after")) {
          Step before = of(steps, step.formula(), name);
          assertThat(at(step.start())).isGreaterThanOrEqualTo(at(before.finish()));
        }
        for (String name : (List<String>) stage.getOrDefault("meets", List.of())) {
          Step other = of(steps, step.formula(), name);
          assertThat(Math.abs(at(step.finish()) - at(other.finish()))).isLessThanOrEqualTo(120);
        }
      }
    }
  }

  private static Step of(List<Step> steps, String formula, String stage) {
    return steps.stream()
        .filter(s -> formula.equals(s.formula()) && stage.equals(s.stage()))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void more_cooks_room_or_tolerance_never_make_it_longer(long seed) {
    Map<String, Object> input = input(seed);
    if (!Timelines.faults(input).isEmpty()) {
      return;
    }
    Timeline.Result result = Timelines.result(input);
    assertThat(result.best()).isTrue();
    List<Object> roomy =
        List.of(map("name", "oven", "capacity", 2), map("name", "mixer", "capacity", 2));
    for (Map<String, Object> easier :
        List.of(
            with(input, "cooks", 2),
            with(input, "stations", roomy),
            with(input, "tolerance", "30 min"))) {
      assertThat(Timelines.result(easier).minutes()).isLessThanOrEqualTo(result.minutes());
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void backwards_it_takes_as_long_as_forwards(long seed) {
    Map<String, Object> forward = input(seed);
    Map<String, Object> backward = with(forward);
    backward.put("finishAt", backward.remove("startAt"));
    if (Timelines.faults(forward).isEmpty()) {
      assertThat(Timelines.result(backward).minutes())
          .isEqualTo(Timelines.result(forward).minutes());
    } else {
      assertThat(Timelines.faults(backward)).isNotEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("seeds")
  void no_stage_can_move_by_more_than_its_float_and_critical_ones_not_at_all(long seed) {
    Map<String, Object> input = input(seed);
    if (Timelines.faults(input).isEmpty()) {
      Timeline.Result result = Timelines.result(input);
      for (Step step : result.steps()) {
        assertThat(step.spare()).isGreaterThanOrEqualTo(0);
        assertThat(step.spare()).isEqualTo(step.latestStart() - step.earliestStart());
        assertThat(step.critical()).isEqualTo(step.spare() == 0);
        assertThat(step.latestFinish()).isLessThanOrEqualTo(result.minutes());
      }
      assertThat(result.steps()).anyMatch(Step::critical);
    }
  }
}
