package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class TrialComparisonTest
    extends CalculationContract<TrialComparison.Input, TrialComparison.Result> {

  /** Three kept with butter inside its window, three gone wrong with butter too cold. */
  private static Book six() {
    return Book.ofCream()
        .trial("t1", "cream@1", "kept", "temper 19; syrup 118; mix 22", "roomTemperature", "21 °C")
        .trial(
            "t2",
            "cream@1",
            "discarded",
            "temper 15; syrup 119; mix 17 22",
            "roomTemperature",
            "20 °C")
        .trial("t3", "cream@1", "kept", "temper 20; syrup 117; mix 23", "roomTemperature", "22 °C")
        .trial(
            "t4",
            "cream@1",
            "discarded",
            "temper 12; syrup 118; mix 16",
            "roomTemperature",
            "22 °C")
        .trial(
            "t5",
            "cream@1",
            "recovered",
            "temper 16.5; syrup 120; mix 18 22",
            "roomTemperature",
            "21 °C")
        .trial("t6", "cream@1", "kept", "temper 18; syrup 119; mix 21", "roomTemperature", "20 °C")
        .trial("t7", "cream@1", "", "temper 19; syrup 111; mix 23", "roomTemperature", "20 °C")
        .trial("t8", "cream@2", "", "temper 19; syrup 116; mix 23", "roomTemperature", "20 °C");
  }

  private static final Plugin CHECK = new StandIns(new StandIns.Check());

  @Override
  protected Calculation<TrialComparison.Input, TrialComparison.Result> calculation() {
    return new TrialComparison();
  }

  @Override
  protected Plugin plugin() {
    return new TrialsPlugin();
  }

  @Override
  protected Kitchen kitchen() {
    return six().kitchen(CHECK);
  }

  private static Answer<TrialComparison.Result> compared(Kitchen kitchen, Map<String, ?> input) {
    return new TrialComparison()
        .calculate(
            new RecordReader((tamis.engine.record.References) kitchen, Limits.usual())
                .read(TrialComparison.Input.class, input),
            kitchen);
  }

  private static Answer<TrialComparison.Result> compared(Book book, Object... more) {
    Map<String, Object> input = Book.map("trials", List.copyOf(book.trialIds()));
    input.putAll(Book.map(more));
    return compared(book.kitchen(CHECK), input);
  }

  private static Answer<TrialComparison.Result> of(Book book, String... trials) {
    return compared(book.kitchen(CHECK), Map.of("trials", List.of(trials)));
  }

  private static Difference difference(
      TrialComparison.Result result, String stage, String measure) {
    return result.differences().stream()
        .filter(one -> stage.equals(String.valueOf(one.stage())) && one.measure().equals(measure))
        .findFirst()
        .orElseThrow();
  }

  private static List<Fault> faults(Runnable call) {
    Refusal refusal = catchThrowableOfType(Refusal.class, call::run);
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }

  @Test
  void two_trials_are_shown_against_the_window_and_are_too_few_to_name_a_cause() {
    TrialComparison.Result result = of(six(), "t1", "t2").result();
    Difference butter = difference(result, "temper", "temperature");
    assertThat(butter.window().low()).isEqualTo(18);
    assertThat(butter.window().high()).isEqualTo(21);
    assertThat(butter.values())
        .extracting(TrialValue::trial, TrialValue::value, TrialValue::deviation)
        .containsExactly(tuple("t1", 19.0, 0.0), tuple("t2", 15.0, -3.0));
    assertThat(butter.distance()).as("3 °C below a window 3 °C wide").isEqualTo(1, within(1e-9));
    assertThat(result.candidates()).isEmpty();
    assertThat(result.conclusion()).startsWith("too few to name a cause: 1 kept, 1 gone wrong");
    assertThat(butter.separation()).isNull();
    assertThat(butter.chance()).isNull();
  }

  @Test
  void the_furthest_out_stands_first() {
    TrialComparison.Result result = of(six(), "t1", "t2").result();
    // mix 17 °C is 4 °C below 21 to 24: 1.33 widths; butter 1 width; room 1 °C of 5; syrup inside
    assertThat(result.differences())
        .extracting(Difference::stage, Difference::measure)
        .containsExactly(
            tuple("mix", "temperature"),
            tuple("temper", "temperature"),
            tuple(null, "room-temperature"),
            tuple("syrup", "temperature"));
    assertThat(result.differences().get(0).distance()).isEqualTo(4 / 3.0, within(1e-9));
  }

  @Test
  void a_cream_that_was_brought_back_counts_by_where_it_was_and_says_how_it_ended() {
    Difference mix = difference(of(six(), "t1", "t2").result(), "mix", "temperature");
    assertThat(mix.values().get(1).value()).isEqualTo(17);
    assertThat(mix.values().get(1).last()).isEqualTo(22);
    assertThat(mix.values().get(0).last()).isNull();
  }

  @Test
  void a_syrup_on_its_way_counts_by_its_last_reading() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "syrup 104 112 118")
            .trial("b", "cream@1", "discarded", "syrup 111");
    Difference syrup = difference(compared(book).result(), "syrup", "temperature");
    assertThat(syrup.values()).extracting(TrialValue::value).containsExactly(118.0, 111.0);
    assertThat(syrup.values().get(0).minute()).isEqualTo(30);
  }

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
  void the_window_is_that_of_the_place() {
    Answer<TrialComparison.Result> high =
        compared(six().kitchen(CHECK), Map.of("trials", List.of("t1", "t7"), "altitude", "1500 m"));
    Difference syrup = difference(high.result(), "syrup", "temperature");
    assertThat(syrup.window().low()).as("116 less 1500/300").isEqualTo(111);
    assertThat(syrup.window().writtenLow()).isEqualTo(116);
    assertThat(syrup.window().corrected()).isTrue();
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(2.0, 0.0);
    assertThat(high.remarks()).extracting(Remark::code).contains("hot");
  }

  @Test
  void without_that_calculation_windows_are_as_written_and_a_remark_says_so() {
    Answer<TrialComparison.Result> answer =
        compared(six().kitchen(), Map.of("trials", List.of("t1", "t7"), "altitude", "1500 m"));
    Difference syrup = difference(answer.result(), "syrup", "temperature");
    assertThat(syrup.window().low()).isEqualTo(116);
    assertThat(syrup.window().corrected()).isFalse();
    assertThat(answer.remarks()).extracting(Remark::code).contains("window-as-written");
  }

  @Test
  void each_revision_is_held_against_its_own_window_and_is_a_difference() {
    TrialComparison.Result result = of(six(), "t7", "t8").result();
    Difference syrup = difference(result, "syrup", "temperature");
    assertThat(syrup.window().low()).as("of the newest revision").isEqualTo(115);
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(-5.0, 0.0);
    Difference revision = difference(result, "null", "revision");
    assertThat(revision.values()).extracting(TrialValue::value).containsExactly(1.0, 2.0);
  }

  @Test
  void the_revision_of_a_part_is_a_difference() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "syrup 118", "pins", Book.map("coffee-syrup", 1))
            .trial("b", "cream@1", "discarded", "syrup 118", "pins", Book.map("coffee-syrup", 2))
            .trial("c", "cream@1", "kept", "syrup 118");
    List<Difference> differences = of(book, "a", "b", "c").result().differences();
    assertThat(differences).extracting(Difference::measure).containsExactly("revision");
    assertThat(differences.get(0).of()).isEqualTo("coffee-syrup");
    assertThat(differences.get(0).values())
        .extracting(TrialValue::value)
        .containsExactly(1.0, 2.0, null);
    assertThat(of(book, "a", "c").result().differences()).isEmpty();
  }

  @Test
  void equal_readings_of_which_one_is_out_of_its_own_window_are_a_difference() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "discarded", "syrup 115.5")
            .trial("b", "cream@2", "kept", "syrup 115.5");
    Difference syrup = difference(of(book, "a", "b").result(), "syrup", "temperature");
    assertThat(syrup.values()).extracting(TrialValue::deviation).containsExactly(-0.5, 0.0);
  }

  @Test
  void weights_are_told_in_percent_off_the_bill_with_their_lots() {
    Book book =
        Book.ofCream()
            .trial(
                "a",
                "cream@1",
                "kept",
                "",
                "actuals",
                List.of(actual("/lines/1", "404 g", "dairy 7"), actual("/lines/0", "0.3 kg", null)))
            .trial(
                "b",
                "cream@1",
                "discarded",
                "",
                "to",
                Map.of("factor", 2),
                "actuals",
                List.of(actual("/lines/1", "640 g", "dairy 8"), actual("/lines/7", "1 g", null)));
    Answer<TrialComparison.Result> answer = compared(book);
    Difference butter = difference(answer.result(), "mix", "weighed");
    assertThat(butter.of()).isEqualTo("butter-unsalted");
    assertThat(butter.values().get(0).value()).as("404 of 400 g").isEqualTo(1, within(1e-9));
    assertThat(butter.values().get(1).value()).as("640 of 800 g").isEqualTo(-20, within(1e-9));
    assertThat(butter.distance()).as("20 % by tens").isEqualTo(2, within(1e-9));
    assertThat(difference(answer.result(), "mix", "lot").values())
        .extracting(TrialValue::text)
        .containsExactly("dairy 7", "dairy 8");
    assertThat(difference(answer.result(), "null", "batch").values())
        .extracting(TrialValue::value)
        .containsExactly(1.0, 2.0);
    assertThat(answer.remarks())
        .extracting(Remark::message)
        .anyMatch(message -> message.contains("no line /lines/7"));
    assertThat(answer.result().changeNext().change()).startsWith("Weigh butter-unsalted");
    assertThat(answer.result().differences())
        .as("sugar was weighed in one trial, and right")
        .noneMatch(one -> "sugar-granulated".equals(one.of()));
  }

  private static Map<String, Object> actual(String path, String quantity, String lot) {
    Map<String, Object> actual = Book.map("path", path, "quantity", quantity);
    if (lot != null) {
      actual.put("lot", lot);
    }
    return actual;
  }

  @Test
  void changes_durations_scores_and_symptoms_are_set_beside_each_other() {
    Book book =
        Book.ofCream()
            .trial(
                "a",
                "cream@1",
                "kept",
                "",
                "changes",
                List.of("new whisk"),
                "observations",
                List.of(
                    Book.map(
                        "id", "1", "stage", "rest", "at", "2026-04-11T09:00", "duration", "20 min"),
                    Book.map("id", "2", "at", "2026-04-11T09:10", "score", 8.0)))
            .trial(
                "b",
                "cream@1",
                "discarded",
                "",
                "observations",
                List.of(
                    Book.map(
                        "id",
                        "1",
                        "stage",
                        "rest",
                        "at",
                        "2026-04-11T09:00",
                        "duration",
                        "5 min",
                        "symptom",
                        "grainy"),
                    Book.map("id", "2", "at", "2026-04-11T09:10", "score", 3.0)));
    TrialComparison.Result result = compared(book).result();
    Difference rest = difference(result, "rest", "duration");
    assertThat(rest.against()).isEqualTo(Against.AS_WRITTEN);
    assertThat(rest.values()).extracting(TrialValue::deviation).containsExactly(0.0, -15.0);
    assertThat(rest.distance()).as("15 of half of 20 min").isEqualTo(1.5, within(1e-9));
    Difference change = difference(result, "null", "change");
    assertThat(change.of()).isEqualTo("new whisk");
    assertThat(change.values()).extracting(TrialValue::text).containsExactly("tried", "not tried");
    assertThat(difference(result, "null", "score").effect()).isTrue();
    assertThat(difference(result, "rest", "symptom").values())
        .extracting(TrialValue::text)
        .containsExactly("none noted", "grainy");
    assertThat(result.changeNext().change()).startsWith("Keep `rest` to the time");
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
  void a_reading_that_cannot_be_read_is_told_and_counts_as_not_read() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19")
            .trial(
                "b",
                "cream@1",
                "discarded",
                "",
                "observations",
                List.of(
                    Book.map(
                        "id",
                        "1",
                        "stage",
                        "temper",
                        "at",
                        "2026-04-11T09:00",
                        "measure",
                        "temperature",
                        "value",
                        "warm")));
    Answer<TrialComparison.Result> answer = compared(book);
    assertThat(answer.remarks()).extracting(Remark::code).contains("reading-not-readable");
    assertThat(answer.result().unread()).extracting(Unread::stage).contains("temper");
  }

  @Test
  void what_was_lost_is_the_cost_of_what_was_discarded() {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19")
            .trial("b", "cream@1", "discarded", "temper 12", "to", Map.of("factor", 2.5))
            .trial("c", "cream@1", "discarded", "temper 12");
    Map<String, ?> input = Map.of("trials", List.of("a", "b", "c"));
    Lost lost =
        compared(book.kitchen(CHECK, new StandIns(new StandIns.Cost(""))), input).result().lost();
    assertThat(lost.total()).hasToString("7.00 EUR");
    assertThat(lost.trials()).extracting(Lost.LostTrial::trial).containsExactly("b", "c");
    assertThat(lost.unknown()).isZero();
    Answer<TrialComparison.Result> unpriced =
        compared(book.kitchen(CHECK, new StandIns(new StandIns.Cost("cream"))), input);
    assertThat(unpriced.result().lost().total()).isNull();
    assertThat(unpriced.result().lost().unknown()).isEqualTo(2);
    assertThat(unpriced.remarks())
        .extracting(Remark::message)
        .anyMatch(m -> m.contains("no price of butter-unsalted"));
    Answer<TrialComparison.Result> absent = compared(book.kitchen(CHECK), input);
    assertThat(absent.result().lost().total()).isNull();
    assertThat(absent.remarks()).extracting(Remark::code).contains("cost-not-loaded");
  }

  /** Only the columns, that is trials, values, readings and lost, follow the order of asking. */
  @Test
  void the_order_of_trials_does_not_matter_but_for_the_columns() {
    Book book = six();
    TrialComparison.Result straight = compared(book).result();
    Random random = new Random(20261125);
    for (int round = 0; round < 20; round++) {
      List<String> order = new ArrayList<>(book.trialIds());
      Collections.shuffle(order, random);
      TrialComparison.Result other =
          compared(book.kitchen(CHECK), Map.of("trials", order)).result();
      assertThat(other.trials()).extracting(TriedTrial::trial).isEqualTo(order);
      assertThat(other.differences()).hasSameSizeAs(straight.differences());
      for (int i = 0; i < straight.differences().size(); i++) {
        Difference one = straight.differences().get(i);
        Difference two = other.differences().get(i);
        assertThat(two.values()).containsExactlyInAnyOrderElementsOf(one.values());
        assertThat(two).usingRecursiveComparison().ignoringFields("values").isEqualTo(one);
      }
      assertThat(other.candidates()).isEqualTo(straight.candidates());
      assertThat(other.conclusion()).isEqualTo(straight.conclusion());
      assertThat(other.changeNext()).isEqualTo(straight.changeNext());
      assertThat(other.unread()).isEqualTo(straight.unread());
    }
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

  @Test
  void all_trials_of_a_formula_are_compared_by_its_name() {
    TrialComparison.Result result =
        compared(six().kitchen(CHECK), Map.of("formula", "cream")).result();
    assertThat(result.trials()).hasSize(8);
    assertThat(faults(() -> compared(Book.ofCream().kitchen(), Map.of("formula", "cream"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.MISSING, "/formula"));
  }

  @Test
  void unknown_trials_are_all_told() {
    assertThat(faults(() -> of(six(), "t1", "t77", "t78")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.UNKNOWN_TRIAL, "/trials/1"),
            tuple(FaultCode.UNKNOWN_TRIAL, "/trials/2"));
  }

  @Test
  void trials_of_two_formulas_are_refused() {
    Book book = six();
    book.with(
        "paste@1",
        Map.of("id", "paste", "lines", List.of(Map.of("ingredient", "almond", "quantity", "1 g"))));
    book.trial("p1", "paste@1", "kept", "");
    assertThat(faults(() -> of(book, "t1", "p1", "t2")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/trials/1"));
  }

  @Test
  void one_trial_twice_the_same_and_none_are_refused() {
    assertThat(faults(() -> of(six(), "t1"))).extracting(Fault::pointer).containsExactly("/trials");
    assertThat(faults(() -> of(six(), "t1", "t1")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/trials/1"));
    assertThat(faults(() -> compared(six().kitchen(), Map.of())))
        .extracting(Fault::code)
        .containsExactly(FaultCode.EXACTLY_ONE);
    assertThat(faults(() -> compared(six().kitchen(), Map.of("formula", "cream@1"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/formula"));
  }

  @Test
  void a_place_that_cannot_be_is_a_fault_at_its_own_name() {
    assertThat(
            faults(
                () ->
                    compared(
                        six().kitchen(CHECK),
                        Map.of(
                            "trials",
                            List.of("t1", "t2"),
                            "altitude",
                            "100 m",
                            "pressure",
                            "900 hPa"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/pressure"));
    assertThat(
            faults(
                () ->
                    compared(
                        six().kitchen(CHECK),
                        Map.of("trials", List.of("t1", "t2"), "altitude", "9000 m"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.OUT_OF_BOUNDS, "/altitude"));
  }

  @Test
  void a_revision_that_is_not_there_is_a_fault_of_its_trial() {
    Book book = six().trial("t9", "cream@7", "kept", "");
    assertThat(faults(() -> of(book, "t1", "t9")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.UNKNOWN_FORMULA, "/trials/1"));
  }

  @Test
  void a_trial_without_a_revision_is_taken_at_the_newest_and_says_so() {
    Book book = six().trial("t9", "cream", "kept", "temper 19");
    assertThat(of(book, "t1", "t9").remarks())
        .extracting(Remark::code)
        .contains("revision-not-pinned");
  }
}
