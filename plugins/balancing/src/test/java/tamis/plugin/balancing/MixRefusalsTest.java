package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.balancing.Mixes.balanced;
import static tamis.plugin.balancing.Mixes.bound;
import static tamis.plugin.balancing.Mixes.faults;
import static tamis.plugin.balancing.Mixes.map;
import static tamis.plugin.balancing.Mixes.own;
import static tamis.plugin.balancing.Mixes.priced;
import static tamis.plugin.balancing.Mixes.withBounds;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** What cannot be meant, and what is not known: all of it at once. */
class MixRefusalsTest {
  @Test
  void what_is_not_known_is_a_fault_and_never_none() {
    assertThat(
            faults(
                "ingredients",
                List.of(
                    map("ingredient", "glucose-syrup"),
                    own("mystery", "fat", 2.0),
                    map("ingredient", "sugar-granulated")),
                "bounds",
                List.of(bound("sweetness", "target", 20.0), bound("water", "high", 60.0))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactlyInAnyOrder(
            tuple(FaultCode.MISSING, "/ingredients/0/composition/sweetness"),
            tuple(FaultCode.MISSING, "/ingredients/1/composition/sweetness"),
            tuple(FaultCode.MISSING, "/ingredients/1/composition/water"));
    assertThat(
            balanced(
                    "ingredients",
                    List.of(
                        withBounds(
                            map("ingredient", "glucose-syrup"),
                            "composition",
                            map("sweetness", 33.0))),
                    "aim",
                    "most",
                    "of",
                    "sweetness")
                .result()
                .value())
        .isEqualTo(33, within(1e-9));
  }

  @Test
  void a_price_that_is_missing_is_a_fault_where_cost_matters() {
    List<Object> items = List.of(priced("a", "1 EUR", "fat", 2.0), own("b", "fat", 9.0));
    assertThat(faults("ingredients", items, "bounds", List.of(bound("fat", "low", 3.0))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.MISSING, "/ingredients/1/pricePerKilogram"));
    Answer<Balancing.Result> near =
        balanced("ingredients", items, "bounds", List.of(bound("fat", "target", 3.0)));
    assertThat(near.result().cost()).isNull();
    assertThat(near.remarks()).extracting(Remark::code).contains("cost-not-known");
  }

  @Test
  void money_of_two_currencies_is_refused() {
    assertThat(
            faults(
                "ingredients",
                List.of(priced("a", "1 EUR", "fat", 2.0), priced("b", "1 USD", "fat", 9.0))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/ingredients/1"));
  }

  @Test
  void all_contradictions_are_told_at_once() {
    assertThat(
            faults(
                "ingredients",
                List.of(
                    withBounds(own("a", "fat", 1.0), "low", "2 kg", "high", "1 kg"),
                    own("b", "fat", -1.0),
                    map("ingredient", "milk-whole", "name", "milk")),
                "bounds",
                List.of(
                    bound("fat", "low", 9.0, "high", 8.0),
                    bound("water"),
                    bound("salt", "low", -1.0))))
        .extracting(Fault::pointer)
        .contains(
            "/ingredients/0/low",
            "/ingredients/1/composition/fat",
            "/ingredients/2",
            "/bounds/0/low",
            "/bounds/1",
            "/bounds/2/low");
  }

  @Test
  void what_stands_twice_is_refused() {
    assertThat(
            faults(
                "ingredients",
                List.of(map("ingredient", "milk-whole"), map("ingredient", "whole milk")),
                "aim",
                "most",
                "of",
                "fat"))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/ingredients/1/ingredient"));
    assertThat(
            faults(
                "ingredients",
                List.of(own("a", "fat", 1.0)),
                "bounds",
                List.of(bound("fat", "low", 1.0), bound("fat", "high", 2.0))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/bounds/1/property"));
  }

  @Test
  void aims_that_do_not_fit_are_refused() {
    Object items = List.of(priced("a", "1 EUR", "fat", 1.0));
    assertThat(faults("ingredients", items, "aim", "most"))
        .extracting(Fault::pointer)
        .containsExactly("/of");
    assertThat(faults("ingredients", items, "of", "fat"))
        .extracting(Fault::pointer)
        .containsExactly("/of");
    assertThat(faults("ingredients", items, "aim", "nearest"))
        .extracting(Fault::pointer)
        .containsExactly("/bounds");
    assertThat(
            faults(
                "ingredients",
                items,
                "aim",
                "least",
                "of",
                "fat",
                "bounds",
                List.of(bound("fat", "target", 1.0))))
        .extracting(Fault::pointer)
        .containsExactly("/aim");
    assertThat(faults("ingredients", items, "aim", "least", "of", "fatt"))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.NOT_ALLOWED, "/of"));
    assertThat(
            faults(
                "ingredients",
                items,
                "bounds",
                List.of(
                    bound("fat", "target", 1.0), bound("water-left", "low", 1.0, "per", "whole"))))
        .isNotEmpty();
  }

  @ParameterizedTest
  @ValueSource(strings = {"NaN", "Infinity", "-1", "1e400", "viel"})
  void numbers_that_are_none_are_refused(String number) {
    assertThat(
            faults(
                "ingredients",
                List.of(map("name", "a", "composition", map("fat", number))),
                "bounds",
                List.of(bound("fat", "low", number))))
        .extracting(Fault::pointer)
        .contains("/ingredients/0/composition/fat", "/bounds/0/low");
  }
}
