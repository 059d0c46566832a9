package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.timeline.Timelines.cream;
import static tamis.plugin.timeline.Timelines.faults;
import static tamis.plugin.timeline.Timelines.formula;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.stage;
import static tamis.plugin.timeline.Timelines.with;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;

/** What cannot be planned, each with its place and what would be allowed. */
class TimelineFaultsTest {
  private static final Map<String, Object> CREAM =
      map("formulas", List.of(cream()), "finishAt", "2026-05-01T09:00");

  private static void only(Map<String, ?> input, String code, String pointer, String message) {
    assertThat(faults(input))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).hasToString(code);
              assertThat(fault.pointer()).isEqualTo(pointer);
              assertThat(fault.message()).isEqualTo(message);
            });
  }

  private static Map<String, Object> net(Object... activities) {
    return map("activities", List.of(activities));
  }

  @Test
  void a_circle_names_its_path() {
    only(
        net(
            map("id", "A", "minutes", 1, "after", List.of("C")),
            map("id", "B", "minutes", 1, "after", List.of("A")),
            map("id", "C", "minutes", 1, "after", List.of("B"))),
        "cycle",
        "/activities/0/after",
        "activities wait for each other in a circle: A → C → B → A");
  }

  @Test
  void nothing_waits_for_or_meets_itself_and_names_are_known_and_once() {
    assertThat(
            faults(
                net(
                    map("id", "A", "minutes", 1, "after", List.of("A"), "meets", List.of("A")),
                    map("id", "A", "minutes", 1, "after", List.of("b")),
                    map("id", "B", "minutes", 1, "meets", List.of("Z")))))
        .extracting(Fault::pointer)
        .containsExactly(
            "/activities/0/after/0",
            "/activities/0/meets/0",
            "/activities/1/id",
            "/activities/1/after/0",
            "/activities/2/meets/0");
  }

  @Test
  void figures_out_of_bounds_are_told_all_at_once() {
    Map<String, Object> input =
        with(
            CREAM,
            "cooks",
            0,
            "stations",
            List.of(map("name", "oven", "capacity", 0)),
            "shifts",
            List.of(map("from", "2026-05-01T09:00", "to", "2026-05-01T08:00")),
            "delays",
            List.of(map("stage", "foam", "minutes", -1)));
    assertThat(faults(input))
        .extracting(Fault::pointer)
        .containsExactly("/cooks", "/stations/0/capacity", "/shifts/0/to", "/delays/0/minutes");
    only(
        net(map("id", "A", "minutes", -4)),
        "out-of-bounds",
        "/activities/0/minutes",
        "`minutes` must be at least 0 and at most 1000000, was -4");
  }

  @Test
  void a_finish_that_is_too_early_says_the_earliest() {
    only(
        with(CREAM, "asOf", "2026-05-01T08:50"),
        "impossible",
        "/finishAt",
        "`finishAt` 2026-05-01T09:00 is too early: work would have to start at 2026-05-01T08:38,"
            + " before `asOf` 2026-05-01T08:50; the earliest it can be ready is 2026-05-01T09:12");
    only(
        with(
            map("formulas", List.of(cream()), "startAt", "2026-05-01T08:00"),
            "asOf",
            "2026-05-01T08:50"),
        "impossible",
        "/startAt",
        "`startAt` 2026-05-01T08:00 is before `asOf` 2026-05-01T08:50; the earliest it can be"
            + " ready is 2026-05-01T09:12");
  }

  @Test
  void stages_that_cannot_meet_are_named_with_by_how_much() {
    List<Map<String, Object>> stages =
        List.of(
            stage("syrup", "stove", 12, true),
            stage("foam", "mixer", 8, true, "meets", List.of("syrup")));
    Map<String, Object> input =
        map("formulas", List.of(formula("cream", stages)), "finishAt", "2026-05-01T09:00");
    only(
        input,
        "impossible",
        "/formulas/0/stages",
        "`cream/foam` and `cream/syrup` cannot finish within 2 min of each other; the least is"
            + " 8 min apart (both need a cook's hands all the time)");
    assertThat(faults(with(input, "cooks", 2))).isEmpty();
    assertThat(faults(with(input, "tolerance", "8 min"))).isEmpty();
  }

  @Test
  void a_wait_that_cannot_be_kept_is_named_with_by_how_much() {
    List<Map<String, Object>> stages =
        List.of(
            stage("proof", "proofer", 60, false, "within", "10 min"),
            stage("wash", "bench", 6, true, "after", List.of("proof")),
            stage("dust", "bench", 15, true, "after", List.of("proof")),
            stage("bake", "oven", 20, false, "after", List.of("wash", "dust")));
    assertThat(
            faults(
                map(
                    "formulas",
                    List.of(
                        formula(
                            "buns",
                            List.of(
                                stages.get(0),
                                stages.get(1),
                                with(stages.get(1), "id", "wash-two"),
                                with(stages.get(1), "id", "wash-three"),
                                stages.get(2),
                                stages.get(3)))),
                    "finishAt",
                    "2026-05-01T09:00")))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).hasToString("impossible");
              assertThat(fault.message()).startsWith("these cannot all hold at once: ");
            });
  }

  @Test
  void hands_longer_than_any_shift_and_shifts_that_do_not_come() {
    only(
        with(CREAM, "shifts", List.of(map("from", "08:00", "to", "08:11"))),
        "impossible",
        "/formulas/0/stages",
        "`cream/syrup` needs hands for 12 min, longer than any shift (11 min)");
    only(
        with(CREAM, "shifts", List.of(map("from", "2026-05-02T08:00", "to", "2026-05-02T12:00"))),
        "impossible",
        "/shifts",
        "the stages that need hands do not all fit into the shifts; give more shifts or cooks");
  }

  @Test
  void an_unknown_stage_of_a_delay_is_told_with_those_that_are_known() {
    only(
        with(CREAM, "delays", List.of(map("stage", "foams", "minutes", 6))),
        "unknown-stage",
        "/delays/0/stage",
        "no stage `foams` in this plan; did you mean foam?");
  }

  @Test
  void a_missing_duration_is_not_taken_for_nothing() {
    Map<String, Object> open = formula("f", List.of(map("id", "mix", "hands", true)));
    only(
        map("formulas", List.of(open), "finishAt", "2026-05-01T09:00"),
        "incomplete",
        "/formulas/0/stages",
        "stage `mix` of `f` has no `duration`; not known is not zero, so it must be given");
  }

  @Test
  void faults_of_several_formulas_are_told_at_once_where_they_are() {
    Map<String, Object> open = formula("f", List.of(map("id", "mix", "hands", true)));
    assertThat(
            faults(
                map(
                    "formulas",
                    List.of("no-such-thing", open, map("formula", "nor-this")),
                    "finishAt",
                    "2026-05-01T09:00")))
        .extracting(Fault::pointer)
        .contains("/formulas/2/formula");
  }

  @Test
  void a_time_that_the_clocks_skip_is_refused() {
    only(
        with(CREAM, "finishAt", "2026-03-29T02:30", "zone", "Europe/Zurich"),
        "not-allowed",
        "/finishAt",
        "`finishAt` 2026-03-29T02:30 does not exist in Europe/Zurich: the clocks are put forward"
            + " past it");
    assertThat(faults(with(CREAM, "zone", "Mars/Olympus")))
        .extracting(Fault::pointer)
        .containsExactly("/zone");
  }

  @Test
  void exactly_one_time_and_exactly_one_kind_of_work_are_given() {
    assertThat(faults(map("formulas", List.of(cream()))))
        .extracting(Fault::message)
        .containsExactly("needs exactly one of finishAt, startAt, was given none");
    assertThat(faults(with(CREAM, "startAt", "2026-05-01T08:00")))
        .extracting(Fault::message)
        .containsExactly("needs exactly one of finishAt, startAt, was given both");
    assertThat(faults(with(CREAM, "activities", List.of(map("id", "A", "minutes", 1)))))
        .extracting(fault -> fault.code().toString())
        .containsExactly("exactly-one");
  }

  @Test
  void stations_stand_once_and_times_are_readable() {
    assertThat(
            faults(
                with(
                    CREAM,
                    "stations",
                    List.of(
                        map("name", "oven", "capacity", 1), map("name", "Oven ", "capacity", 2)))))
        .extracting(Fault::pointer)
        .containsExactly("/stations/1/name");
    assertThat(
            faults(with(CREAM, "shifts", List.of(map("from", "four", "to", "2026-05-01T09:00")))))
        .extracting(Fault::pointer)
        .containsExactly("/shifts/0/from");
    assertThat(
            faults(with(CREAM, "shifts", List.of(map("from", "04:00", "to", "2026-05-01T09:00")))))
        .extracting(Fault::pointer)
        .containsExactly("/shifts/0/to");
  }

  @Test
  void years_out_of_reach_are_refused() {
    only(
        with(CREAM, "finishAt", "-999999999-01-01T00:00"),
        "out-of-bounds",
        "/finishAt",
        "`finishAt` -999999999-01-01T00:00 must be in the years 1900 to 2999");
    assertThat(
            faults(
                with(
                    CREAM,
                    "asOf",
                    "+12026-05-01T00:00",
                    "shifts",
                    List.of(map("from", "1026-05-01T00:00", "to", "3026-05-01T00:00")))))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/shifts/0/from", "/shifts/0/to");
  }

  @Test
  void ten_thousand_that_cannot_meet_are_told_soon() {
    List<Map<String, Object>> many = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      many.add(
          map(
              "id",
              "a" + i,
              "minutes",
              5,
              "station",
              "oven",
              "meets",
              i % 2 == 0 ? List.of() : List.of("a" + (i - 1))));
    }
    assertThat(faults(map("activities", many)))
        .isNotEmpty()
        .first()
        .extracting(Fault::message)
        .isEqualTo(
            "`a1` and `a0` cannot finish within 2 min of each other; the least is 5 min apart");
  }

  @Test
  void a_document_and_a_name_are_not_given_together() {
    assertThat(
            faults(
                map(
                    "formulas",
                    List.of(with(cream(), "formula", "brioche")),
                    "finishAt",
                    "2026-05-01T09:00")))
        .extracting(fault -> fault.code().toString())
        .contains("exactly-one");
  }

  @Test
  void pieces_and_loads_that_are_not_known_are_asked_for() {
    Map<String, Object> bake =
        with(
            formula("f", List.of(stage("bake", "oven", 20, false, "per", "load"))),
            "yield",
            map("portions", 12));
    assertThat(faults(map("formulas", List.of(bake), "finishAt", "2026-05-01T09:00")))
        .extracting(Fault::message)
        .containsExactly(
            "stage `bake` of `f` is repeated per load, but how many pieces there are is not known:"
                + " give `yield.pieces`, `yield.pieceMass` or `yield.pans`");
  }
}
