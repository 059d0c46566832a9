package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.orders.Mornings.asked;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** When the stages of the day are done. */
class ProductionTimelineTest {
  @Test
  void with_a_time_the_stages_have_theirs() {
    Production.Result result =
        asked(List.of(order("sponge", "pieces", 1.0, 2)), "due", "2026-05-02T07:30").result();
    assertThat(result.timeline().finish()).isEqualTo("2026-05-02T07:30");
    assertThat(result.timeline().steps())
        .extracting(Timetable.Step::stage)
        .containsExactly("whip", "bake");
    assertThat(result.timeline().start()).isEqualTo("2026-05-02T06:50");
  }

  @Test
  void a_part_of_several_formulas_has_its_stages_once_and_before_them() {
    Map<String, Object> first =
        map(
            "formula",
            Shop.formula(
                "tart",
                ">custard 200 g",
                "stages",
                List.of(map("id", "fill", "duration", "5 min"))),
            "pieces",
            1.0,
            "pieceMass",
            "200 g");
    Map<String, Object> second =
        map(
            "formula",
            Shop.formula(
                "bun", ">custard 90 g", "stages", List.of(map("id", "pipe", "duration", "8 min"))),
            "pieces",
            10.0,
            "pieceMass",
            "90 g");
    Production.Result result =
        asked(List.of(first, second), "due", "2026-05-02T07:30", "cooks", 2).result();
    assertThat(result.timeline().steps())
        .extracting(Timetable.Step::formula, Timetable.Step::stage, Timetable.Step::finish)
        .containsExactlyInAnyOrder(
            tuple("custard", "cook", "2026-05-02T07:22"),
            tuple("tart", "fill", "2026-05-02T07:30"),
            tuple("bun", "pipe", "2026-05-02T07:30"));
    Production.Result fromStock =
        asked(
                List.of(first),
                "due",
                "2026-05-02T07:30",
                "stock",
                List.of(map("formula", "custard", "quantity", "1 kg")))
            .result();
    assertThat(fromStock.timeline().steps())
        .extracting(Timetable.Step::stage)
        .containsExactly("fill");
  }

  @Test
  void without_times_in_its_stages_there_is_no_timeline_and_that_is_told() {
    Answer<Production.Result> answer =
        asked(List.of(order("snow", "portions", 3.0, 1)), "due", "2026-05-02T07:30");
    assertThat(answer.result().timeline()).isNull();
    assertThat(answer.remarks()).extracting(Remark::code).contains("no-timeline");
    Map<String, Object> dish =
        Shop.formula(
            "dish",
            "egg 1 each",
            "yield",
            map("portions", 1.0),
            "stages",
            List.of(
                map("id", "whip", "duration", "2 min"),
                map("id", "shape", "duration", "1 min", "per", "piece"),
                map(
                    "id",
                    "bake",
                    "duration",
                    "15 min",
                    "per",
                    "load",
                    "load",
                    "20 g",
                    "after",
                    List.of("shape"))));
    answer = asked(List.of(map("formula", dish, "portions", 1.0)), "due", "2026-05-02T07:30");
    assertThat(answer.remarks()).extracting(Remark::code).contains("repeats-not-known");
    assertThat(answer.result().timeline().start())
        .as("three loads of 20 g")
        .isEqualTo("2026-05-02T06:44");
  }

  @Test
  void a_stage_of_unknown_length_leaves_no_timeline() {
    Map<String, Object> dish =
        Shop.formula(
            "dish",
            "egg 1 each",
            "yield",
            map("portions", 1.0),
            "stages",
            List.of(map("id", "whip"), map("id", "bake", "duration", "15 min")));
    Answer<Production.Result> answer =
        asked(List.of(map("formula", dish, "portions", 1.0)), "due", "2026-05-02T07:30");
    assertThat(answer.result().timeline()).isNull();
    assertThat(answer.remarks())
        .filteredOn(remark -> remark.code().equals("no-timeline"))
        .singleElement()
        .satisfies(remark -> assertThat(remark.message()).contains("`whip` of `dish`"));
  }

  @Test
  void two_formulas_of_one_name_are_both_timed() {
    List<Object> stages = List.of(map("id", "whip", "duration", "15 min", "hands", true));
    Map<String, Object> yield = map("portions", 1.0);
    List<Object> both =
        List.of(
            map(
                "formula",
                Shop.formula("dish", "egg 1 each", "yield", yield, "stages", stages),
                "portions",
                1.0),
            map(
                "formula",
                Shop.formula("dish", "egg 2 each", "yield", yield, "stages", stages),
                "portions",
                1.0));
    Production.Result result = asked(both, "due", "2026-05-02T07:30").result();
    assertThat(result.timeline().steps()).hasSize(2);
    assertThat(result.timeline().start()).isEqualTo("2026-05-02T07:00");
  }

  @Test
  void a_time_that_is_too_early_is_told_with_the_earliest() {
    Answer<Production.Result> answer =
        asked(
            List.of(order("sponge", "portions", 8.0, 1)),
            "asOf",
            "2026-05-02T07:00",
            "due",
            "2026-05-02T07:30");
    assertThat(answer.result().timeline()).isNull();
    assertThat(answer.remarks())
        .filteredOn(remark -> remark.code().equals("no-timeline"))
        .singleElement()
        .satisfies(
            remark ->
                assertThat(remark.message())
                    .contains("`due` 2026-05-02T07:30 is too early")
                    .endsWith("the earliest it can be ready is 2026-05-02T07:40"));
  }
}
