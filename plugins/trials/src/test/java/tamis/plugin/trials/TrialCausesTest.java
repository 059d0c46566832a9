package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.trials.Compared.CHECK;
import static tamis.plugin.trials.Compared.compared;
import static tamis.plugin.trials.Compared.difference;
import static tamis.plugin.trials.Compared.of;
import static tamis.plugin.trials.Compared.six;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** What goes with failure, and the one thing to change or to read next. */
class TrialCausesTest {
  @Test
  void what_goes_with_failure_is_named_with_its_figures() {
    TrialComparison.Result result = of(six(), "t1", "t2", "t3", "t4", "t5", "t6").result();
    Difference butter = difference(result, "temper", "temperature");
    assertThat(butter.separation()).isEqualTo(1);
    assertThat(butter.chance()).as("one way in 20").isEqualTo(0.05, within(1e-12));
    // butter and mix can reach one in twenty; the room's ties allow 0.1 at best, syrup never left
    assertThat(result.candidates()).hasSize(2);
    LikelyCause cause =
        result.candidates().stream()
            .filter(c -> "temper".equals(c.stage()))
            .findFirst()
            .orElseThrow();
    assertThat(cause.cause()).isEqualTo("temperature at `temper` below its window");
    assertThat(cause.support())
        .contains("kept: 18 to 20 °C, 0 of 3 outside 18 to 21 °C")
        .contains("gone wrong: 12 to 16.5 °C, 3 of 3 outside 18 to 21 °C")
        .contains("5.0 % of the time");
    assertThat(cause.chanceOverLooks())
        .isEqualTo(Math.min(1, 0.05 * result.looks()), within(1e-12));
    assertThat(result.looks()).isGreaterThanOrEqualTo(2);
  }

  @Test
  void the_one_change_is_at_the_earliest_stage_that_was_out() {
    NextChange next = of(six(), "t1", "t2", "t3", "t4", "t5", "t6").result().changeNext();
    assertThat(next.stage()).isEqualTo("temper");
    assertThat(next.step()).isEqualTo(NextChange.Step.BRING_BACK);
    assertThat(next.change())
        .isEqualTo("Bring the temperature at `temper` to 18 to 21 °C. Leave all else as it is.");
    assertThat(next.window().low()).isEqualTo(18);
    NextChange ofTwo = of(six(), "t1", "t2").result().changeNext();
    assertThat(ofTwo.stage()).isEqualTo("temper");
    assertThat(ofTwo.reason())
        .contains("too few to name a cause", "comes before temperature at `mix`");
  }

  @Test
  void recovered_trials_count_as_the_caller_says() {
    Book book = six();
    String[] six = {"t1", "t2", "t3", "t4", "t5", "t6"};
    assertThat(of(book, six).result().trials().get(4).outcome()).isEqualTo(Outcome.GONE_WRONG);
    TrialComparison.Result kept =
        compared(book.kitchen(CHECK), Map.of("trials", List.of(six), "recovered", "kept")).result();
    assertThat(kept.trials().get(4).outcome()).isEqualTo(Outcome.KEPT);
    assertThat(kept.conclusion()).startsWith("too few to name a cause: 4 kept, 2 gone wrong");
    TrialComparison.Result out =
        compared(book.kitchen(CHECK), Map.of("trials", List.of(six), "recovered", "left-out"))
            .result();
    assertThat(out.trials().get(4).outcome()).isEqualTo(Outcome.NOT_JUDGED);
    assertThat(out.candidates()).isEmpty();
  }

  @Test
  void a_change_that_goes_with_failure_is_named_as_fisher_would() {
    Book book = Book.ofCream();
    for (int i = 0; i < 4; i++) {
      book.trial("k" + i, "cream@1", "kept", "temper 19");
      book.trial("w" + i, "cream@1", "discarded", "temper 19", "changes", List.of("old eggs"));
    }
    TrialComparison.Result result = compared(book).result();
    assertThat(result.candidates())
        .singleElement()
        .satisfies(
            cause -> {
              assertThat(cause.cause()).isEqualTo("tried: old eggs");
              assertThat(cause.chance()).as("twice 1 in 70").isEqualTo(2 / 70.0, within(1e-12));
              assertThat(cause.support()).contains("tried in 0 of 4", "tried in 4 of 4");
            });
    assertThat(result.looks()).isEqualTo(1);
    assertThat(result.changeNext().change()).startsWith("Make it without this: old eggs");
  }

  @Test
  void readings_that_are_missing_are_unknown_and_not_zero() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "syrup 118")
            .trial("b", "cream@1", "discarded", "temper 12; syrup 118");
    TrialComparison.Result result = compared(book).result();
    Difference butter = difference(result, "temper", "temperature");
    assertThat(butter.values().get(0))
        .isEqualTo(new TrialValue("a", null, "not read", null, null, null));
    assertThat(result.unread())
        .containsExactly(
            new Unread("temper", "temperature", List.of("a")),
            new Unread("mix", "temperature", List.of("a", "b")));
  }

  @Test
  void what_was_not_read_is_read_next_when_nothing_lies_outside() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19; syrup 118")
            .trial("b", "cream@1", "discarded", "temper 20; syrup 119");
    NextChange next = compared(book).result().changeNext();
    assertThat(next.step()).isEqualTo(NextChange.Step.READ);
    assertThat(next.stage()).isEqualTo("mix");
  }

  @Test
  void the_condition_that_differs_is_next_when_all_was_read_and_inside() {
    Book book =
        Book.ofCream()
            .trial(
                "a", "cream@1", "kept", "temper 19; syrup 118; mix 22", "roomTemperature", "20 °C")
            .trial(
                "b",
                "cream@1",
                "discarded",
                "temper 19; syrup 118; mix 22",
                "roomTemperature",
                "30 °C");
    NextChange next = compared(book).result().changeNext();
    assertThat(next.step()).isEqualTo(NextChange.Step.AS_KEPT);
    assertThat(next.change()).contains("room temperature", "20 °C");
  }

  @Test
  void without_any_difference_it_is_made_once_more() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19; syrup 118; mix 22")
            .trial("b", "cream@1", "discarded", "temper 19; syrup 118; mix 22");
    TrialComparison.Result result = compared(book).result();
    assertThat(result.differences()).isEmpty();
    assertThat(result.changeNext().step()).isEqualTo(NextChange.Step.REPEAT);
  }

  @Test
  void a_measure_that_is_the_same_in_all_trials_changes_nothing() {
    Book with = Book.ofCream();
    for (String id : six().trialIds()) {
      tamis.engine.trial.Trial trial = six().trial(id);
      Map<String, Object> tree =
          new java.util.LinkedHashMap<>(tamis.engine.record.PlainValues.of(trial));
      List<Object> observations = new ArrayList<>((List<?>) tree.get("observations"));
      observations.add(
          Book.map(
              "id",
              "ph",
              "stage",
              "rest",
              "at",
              "2026-04-11T12:00",
              "measure",
              "ph",
              "value",
              "5.4"));
      tree.put("observations", observations);
      tree.put("flourTemperature", "19 °C");
      with.trial(
          id,
          trial.formula().toString(),
          "",
          "",
          tree.entrySet().stream()
              .flatMap(e -> java.util.stream.Stream.of(e.getKey(), e.getValue()))
              .toArray());
    }
    TrialComparison.Result plain = compared(six()).result();
    TrialComparison.Result more = compared(with).result();
    assertThat(more.differences()).isEqualTo(plain.differences());
    assertThat(more.candidates()).isEqualTo(plain.candidates());
    assertThat(more.looks()).isEqualTo(plain.looks());
    assertThat(more.changeNext()).isEqualTo(plain.changeNext());
    assertThat(more.readings()).hasSize(plain.readings().size() + 8);
  }
}
