package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.orders.Mornings.asked;
import static tamis.plugin.orders.Mornings.grams;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** What the day uses, opens, buys, takes from stock and leaves over. */
class ProductionBillTest {
  @Test
  void whites_of_the_yolks_are_used_elsewhere_that_day() {
    Production.Result result =
        asked(List.of(order("custard", "portions", 8.0, 1), order("snow", "portions", 10.0, 1)))
            .result();
    assertThat(result.byProducts())
        .extracting(Sheet.Left::ingredient, Sheet.Left::from)
        .containsExactlyInAnyOrder(tuple("egg-white", "egg"), tuple("egg-yolk", "egg"));
    Sheet.Left white =
        result.byProducts().stream()
            .filter(one -> one.ingredient().equals("egg-white"))
            .findFirst()
            .orElseThrow();
    assertThat(white.madeGrams()).as("of six yolks").isEqualTo(198, within(1e-6));
    assertThat(white.usedGrams()).as("four whites").isEqualTo(132, within(1e-6));
    assertThat(white.grams()).as("two whites").isEqualTo(66, within(1e-6));
    assertThat(result.purchases())
        .filteredOn(one -> one.item().equals("egg"))
        .as("six eggs, not ten")
        .singleElement()
        .satisfies(egg -> assertThat(egg.grams()).isEqualTo(300, within(1e-6)));
  }

  @Test
  void purchases_are_whole_packs_beyond_what_is_on_hand() {
    List<Object> stock =
        List.of(
            map("ingredient", "sugar-granulated", "quantity", "1 kg"),
            map("ingredient", "egg", "quantity", "2 each"),
            map("ingredient", "walnut", "quantity", "9 kg"));
    Production.Result result =
        asked(List.of(order("sponge", "portions", 8.0, 20)), "stock", stock).result();
    assertThat(result.purchases())
        .extracting(
            Sheet.Bought::item,
            Sheet.Bought::packs,
            one -> one.price().toString(),
            Sheet.Bought::leftGrams)
        .as("80 eggs less 2 are 2.6 packs; 2.4 kg of sugar less 1 kg")
        .containsExactly(
            tuple("egg", 3L, "21.60 EUR", 600.0),
            tuple("sugar-granulated", 1L, "27.50 EUR", 23600.0),
            tuple("all-purpose-flour", 1L, "18.50 EUR", 22600.0));
    assertThat(result.stockLeft())
        .extracting(Sheet.StockLeft::ingredient, Sheet.StockLeft::grams)
        .containsExactly(
            tuple("sugar-granulated", 0.0), tuple("egg", 0.0), tuple("walnut", 9000.0));
  }

  @Test
  void finished_parts_on_hand_are_used_before_any_is_made() {
    List<Object> stock = List.of(map("formula", "custard", "quantity", "500 g"));
    Production.Result result =
        asked(List.of(order("gateau", "pieces", 1.0, 1)), "stock", stock).result();
    assertThat(result.batches())
        .extracting(Sheet.BatchRow::formula)
        .containsExactly("sponge", "gateau");
    assertThat(result.stockLeft())
        .extracting(Sheet.StockLeft::formula, one -> Math.rint(one.grams() * 1e6) / 1e6)
        .containsExactly(tuple("custard", 200.0));
    assertThat(grams(result, "milk-whole")).isZero();
    assertThat(result.stockCost().amount().signum()).isPositive();
  }

  @Test
  void what_stock_gives_whole_costs_what_making_it_would_with_all_its_parts() {
    List<Object> two = List.of(order("gateau", "pieces", 1.0, 2));
    List<Object> stock = List.of(map("formula", "gateau", "quantity", "20 kg"));
    Production.Result held = asked(two, "stock", stock).result();
    assertThat(held.batches()).isEmpty();
    assertThat(held.orders().get(0).cost()).isEqualTo(asked(two).result().orders().get(0).cost());
  }

  @Test
  void cream_left_over_is_matched_to_what_it_would_cover() {
    List<Object> stock = List.of(map("formula", "custard", "quantity", "2 kg"));
    List<Object> cakes =
        List.of(map("shape", "round", "diameter", "20 cm", "layers", 2, "layerHeight", "4 cm"));
    Answer<Production.Result> answer =
        asked(
            List.of(order("gateau", "pieces", 1.0, 1)),
            "stock",
            stock,
            "cakes",
            cakes,
            "coat",
            "5 mm");
    // Coat geometry of 20 × 8 cm with a gap of 5 mm: worked by hand in the engine's coats.
    assertThat(answer.result().leftOvers())
        .singleElement()
        .satisfies(
            over -> {
              assertThat(over.grams()).isEqualTo(1700, within(1e-6));
              assertThat(over.covers())
                  .singleElement()
                  .satisfies(cover -> assertThat(cover.wholeCakes()).isEqualTo(2));
            });
    assertThat(answer.remarks()).extracting(Remark::code).contains("keeping-time");
  }

  @Test
  void packaging_that_is_measured_is_not_added_to_what_is_counted() {
    Map<String, Object> wrapped =
        Shop.formula(
            "dish",
            "egg 1 each",
            "yield",
            map("portions", 1.0),
            "packaging",
            List.of(
                map("item", "ribbon", "quantity", "40 cm"),
                map("item", "ribbon", "quantity", "2 each"),
                map("item", "ribbon", "quantity", "60 cm")));
    Production.Result result =
        asked(List.of(map("formula", wrapped, "portions", 1.0, "count", 3))).result();
    assertThat(result.purchases())
        .filteredOn(one -> one.item().equals("ribbon"))
        .extracting(Sheet.Bought::count, Sheet.Bought::unit)
        .containsExactly(tuple(3.0, "m"), tuple(6.0, "each"));
    assertThat(result.missing()).containsOnlyOnce("ribbon");
  }
}
