package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.engine.formula.Card.map;
import static tamis.engine.formula.Sizes.eclairs;
import static tamis.engine.formula.Sizes.have;

import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;

/** So much as what is on hand allows. */
class StockSizingTest {
  private static final double EXACT = 1e-9;

  @Test
  void by_what_is_on_hand_the_scarcest_first() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "5 each"), have("ingredient", "milk", "2 l")));
    assertThat(batch.limitedBy()).as("250 g of 150 g").isEqualTo("egg");
    assertThat(batch.factor()).isEqualTo(250 / 150.0, within(EXACT));
    Batch other =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "5 each"), have("ingredient", "milk", "300 g")));
    assertThat(other.limitedBy()).as("and the last if it is scarcer").isEqualTo("milk-whole");
    assertThat(other.factor()).isEqualTo(1, within(EXACT));
  }

  @Test
  void a_finished_part_on_hand_is_used_and_its_ingredients_are_not_asked_for() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(
                    have("ingredient", "milk-whole", "1 g"), have("formula", "cream", "0.8 kg")));
    assertThat(batch.limitedBy()).isEqualTo("cream");
    assertThat(batch.factor()).isEqualTo(2, within(EXACT));
    assertThat(Bench.codes(batch)).contains("not-needed");
  }

  @Test
  void the_same_thing_on_hand_twice_is_added_up() {
    Batch batch =
        eclairs()
            .batch(
                "eclairs",
                "stock",
                List.of(have("ingredient", "egg", "100 g"), have("ingredient", "egg", "1 each")));
    assertThat(batch.factor()).isEqualTo(1, within(EXACT));
  }

  @Test
  void eggs_on_hand_are_opened_for_yolks_and_whites() {
    Bench bench =
        Bench.with(
            Card.of("cream", "51 g egg-yolk", "50 g egg", "66 g >foam"),
            Card.of("foam", "66 g egg-white"));
    Batch batch = bench.batch("cream", "stock", List.of(have("ingredient", "egg", "12 each")));
    assertThat(batch.factor()).as("three opened and one whole").isEqualTo(3, within(EXACT));
    assertThat(batch.limitedBy()).isEqualTo("egg");
    Object both =
        List.of(have("ingredient", "egg", "12 each"), have("ingredient", "egg-yolk", "510 g"));
    assertThat(bench.batch("cream", "stock", both).factor())
        .as("yolks are on hand, so two are opened and one is whole")
        .isEqualTo(4, within(EXACT));
  }

  @Test
  void of_two_that_are_used_up_together_the_first_is_named() {
    for (String first : List.of("egg", "milk-whole")) {
      String other = first.equals("egg") ? "milk-whole" : "egg";
      String much = first.equals("egg") ? "150 g" : "300 g";
      String more = first.equals("egg") ? "300 g" : "150 g";
      Batch batch =
          eclairs()
              .batch(
                  "eclairs",
                  "stock",
                  List.of(have("ingredient", first, much), have("ingredient", other, more)));
      assertThat(batch.limitedBy()).isEqualTo(first);
      assertThat(batch.factor()).isEqualTo(1, within(EXACT));
    }
  }

  @Test
  void nothing_useful_or_nothing_at_all_on_hand_is_refused() {
    Fault useless =
        eclairs().fault("eclairs", "stock", List.of(have("ingredient", "honey", "1 kg")));
    assertThat(useless.code()).isEqualTo(FaultCode.NO_SIZE);
    Fault none = eclairs().fault("eclairs", "stock", List.of(have("ingredient", "egg", "0 each")));
    assertThat(none.code()).isEqualTo(FaultCode.IMPOSSIBLE);
    assertThat(none.message()).contains("egg");
  }

  @Test
  void all_faults_of_what_is_on_hand_are_told_with_their_place() {
    assertThat(
            eclairs()
                .faults(
                    "eclairs",
                    "stock",
                    List.of(
                        have("ingredient", "egg", "3 %"),
                        have("formula", "cream", "2 each"),
                        have("formula", "choux", "1 l"),
                        have("ingredient", "milk-whole", "1 kg"),
                        map("formula", Card.of("x", "1 g egg").tree(), "quantity", "1 %"))))
        .extracting(Fault::pointer)
        .containsExactly(
            "/to/stock/0/quantity",
            "/to/stock/1/quantity",
            "/to/stock/2/quantity",
            "/to/stock/4/quantity");
  }
}
