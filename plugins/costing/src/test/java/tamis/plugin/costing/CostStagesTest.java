package tamis.plugin.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.costing.Bench.formula;
import static tamis.plugin.costing.Bench.map;
import static tamis.plugin.costing.Bench.stage;
import static tamis.plugin.costing.Costs.asked;
import static tamis.plugin.costing.Costs.money;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.quantity.TimeSpan;
import tamis.engine.spi.Answer;

/** What is spent at each stage, lost with it, and how long doing it again takes. */
class CostStagesTest {
  @Test
  void what_is_at_risk_is_told_to_the_end_of_each_stage() {
    Cost.Result result = asked("cake", "labour", map("ratePerHour", "30.00 EUR")).result();
    assertThat(result.atRisk())
        .extracting(StageRisk::stage, StageRisk::part, risk -> risk.spent().amount().doubleValue())
        .as(
            "eggs 1.44 and 8 min; flour 0.148 and 4 min; sugar 0.165 and 12 min; butter 2.10, 10"
                + " min")
        .containsExactly(
            tuple("foam", null, 5.44),
            tuple("fold", null, 7.59),
            tuple("bake", null, 7.59),
            tuple("syrup", "cream", 13.75),
            tuple("rest", "cream", 13.75),
            tuple("beat", "cream", 20.85),
            tuple("coat", null, 25.77));
    assertThat(result.atRisk())
        .allSatisfy(risk -> assertThat(risk.spent().plus(risk.toCome())).isEqualTo(result.total()));
  }

  @Test
  void a_restart_costs_what_went_into_the_stage_and_nothing_beside_it() {
    List<StageRisk> risks = asked("cake").result().atRisk();
    assertThat(risks)
        .extracting(
            StageRisk::stage,
            risk -> risk.restart().toString(),
            StageRisk::restartMinutes,
            StageRisk::restartHandsMinutes)
        .as("the cream (0.165 and 2.10) is made beside the cake; both are in the coat")
        .containsExactly(
            tuple("foam", "1.44 EUR", 8.0, 8.0),
            tuple("fold", "1.59 EUR", 12.0, 12.0),
            tuple("bake", "1.59 EUR", 42.0, 12.0),
            tuple("syrup", "0.16 EUR", 12.0, 12.0),
            tuple("rest", "0.00 EUR", 60.0, 0.0),
            tuple("beat", "2.26 EUR", 70.0, 22.0),
            tuple("coat", "4.27 EUR", 79.0, 43.0));
  }

  @Test
  void the_hands_of_a_restart_are_those_that_are_paid() {
    Map<String, Object> labour =
        map(
            "ratePerHour",
            "60 EUR",
            "stages",
            List.of(
                map("stage", "foam", "duration", "3 min"),
                map("stage", "bake", "duration", "2 min")));
    assertThat(asked("cake", "labour", labour).result().atRisk())
        .extracting(StageRisk::stage, StageRisk::restartHandsMinutes)
        .as("3 of foam, 4 of fold, 2 at the oven; 12, 0 and 10 of the cream; 9 of the coat")
        .contains(tuple("foam", 3.0), tuple("fold", 7.0), tuple("bake", 9.0), tuple("coat", 40.0));
  }

  @Test
  void a_stage_that_names_no_other_waits_for_none() {
    Map<String, Object> dish =
        formula(
            "dish",
            "egg 1 each @whip; all-purpose-flour 1 kg @fold",
            "stages",
            List.of(stage("whip", 3), stage("fold", 2)));
    assertThat(asked(dish).result().atRisk())
        .extracting(StageRisk::restartMinutes)
        .containsExactly(3.0, 2.0);
  }

  @Test
  void pieces_and_loads_repeat_a_stage() {
    Map<String, Object> dish =
        formula(
            "dish",
            "egg 10 each",
            "yield",
            map("pieces", 24.0),
            "stages",
            List.of(
                stage("shape", 1, "per", "piece"),
                stage("bake", 15, "per", "load", "load", "20 each", "hands", false),
                stage("scale", 2, "per", "load", "load", "200 g")));
    Cost.Result result =
        asked(
                dish,
                "labour",
                map("ratePerHour", "60 EUR"),
                "energy",
                map(
                    "pricePerKilowattHour",
                    "0.50 EUR",
                    "stages",
                    List.of(map("stage", "bake", "power", "4 kW"))))
            .result();
    assertThat(result.atRisk()).extracting(StageRisk::minutes).containsExactly(24.0, 30.0, 6.0);
    assertThat(result.labour()).isEqualTo(money("30.00 EUR"));
    assertThat(result.energy()).isEqualTo(money("1.00 EUR"));
  }

  @Test
  void a_formula_without_stages_is_spent_at_once() {
    Answer<Cost.Result> answer = asked(formula("dish", "egg 1 each; >cream 80 g"));
    assertThat(answer.result().atRisk())
        .extracting(StageRisk::stage, StageRisk::part)
        .containsExactly(
            tuple("syrup", "cream"),
            tuple("rest", "cream"),
            tuple("beat", "cream"),
            tuple("all", null));
    assertThat(answer.remarks()).extracting(Remark::code).contains("no-stages");
  }

  @Test
  void a_stage_of_a_part_is_named_with_its_formula() {
    Map<String, Object> labour =
        map(
            "ratePerHour",
            "60 EUR",
            "stages",
            List.of(
                map("stage", "cream/rest", "duration", "5 min", "ratePerHour", "120 EUR"),
                map("stage", "foam", "duration", "1 min")));
    Cost.Result result = asked("cake", "labour", labour).result();
    assertThat(result.labour())
        .as("1 + 4 + 12 + 10 + 9 min, 5 at twice")
        .isEqualTo(money("46 EUR"));
  }

  @Test
  void hands_without_a_time_make_labour_known_in_part() {
    Map<String, Object> dish =
        formula("dish", "egg 1 each", "stages", List.of(map("id", "whip"), stage("rest", 5)));
    Answer<Cost.Result> answer = asked(dish, "labour", map("ratePerHour", "12 EUR"));
    assertThat(answer.result().incomplete()).contains("/labour", "/total");
    assertThat(answer.result().labour()).isEqualTo(money("1.00 EUR"));
    assertThat(answer.remarks()).extracting(Remark::code).contains("time-missing", "hands-assumed");
  }

  @Test
  void a_wage_below_nothing_is_a_fault() {
    TimeSpan hour = TimeSpan.ofMinutes(60);
    assertThatThrownBy(() -> new Labour.StageTime("syrup", hour, money("-50 EUR")))
        .isInstanceOf(Refusal.class)
        .hasMessageContaining("-50");
  }
}
