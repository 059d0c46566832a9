package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.trials.Compared.CHECK;
import static tamis.plugin.trials.Compared.compared;
import static tamis.plugin.trials.Compared.difference;
import static tamis.plugin.trials.Compared.of;
import static tamis.plugin.trials.Compared.six;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class TrialComparisonTest
    extends CalculationContract<TrialComparison.Input, TrialComparison.Result> {
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
}
