package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.orders.Mornings.asked;
import static tamis.plugin.orders.Mornings.grams;
import static tamis.plugin.orders.Mornings.made;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class ProductionTest extends CalculationContract<Production.Input, Production.Result> {
  @Override
  protected Calculation<Production.Input, Production.Result> calculation() {
    return new Production();
  }

  @Override
  protected Plugin plugin() {
    return new OrdersPlugin();
  }

  /** Grams rest on what formulas say and prices on the shop's list; neither is a table. */
  @Override
  protected boolean namesSources() {
    return false;
  }

  @Override
  protected Kitchen kitchen() {
    return Shop.ofCakes();
  }

  @Test
  void orders_are_covered_exactly() {
    Production.Result result = asked(List.of(order("snow", "portions", 12.0, 3))).result();
    assertThat(result.batches())
        .extracting(Sheet.BatchRow::formula, Sheet.BatchRow::number)
        .containsExactly(tuple("snow", 1));
    assertThat(result.batches().get(0).factor()).isEqualTo(3.6, within(1e-9));
    assertThat(grams(result, "egg-white")).isEqualTo(4 * 33 * 3.6, within(1e-6));
    assertThat(grams(result, "sugar-granulated")).isEqualTo(720, within(1e-6));
    assertThat(made(result, "snow").spareGrams()).isZero();
  }

  @Test
  void a_part_of_several_formulas_is_made_once() {
    Production.Result result =
        asked(List.of(order("gateau", "pieces", 2.0, 1), order("trifle", "portions", 4.0, 3)))
            .result();
    assertThat(result.batches())
        .extracting(Sheet.BatchRow::formula)
        .containsExactly("sponge", "custard", "gateau", "trifle");
    assertThat(made(result, "custard").madeGrams())
        .as("2 × 300 g and 3 × 400 g")
        .isEqualTo(1800, within(1e-6));
    assertThat(made(result, "sponge").madeGrams()).isEqualTo(800, within(1e-6));
  }

  @Test
  void equal_lines_are_one_row_and_the_order_of_lines_does_not_matter() {
    List<Object> orders =
        List.of(
            order("snow", "portions", 10.0, 2),
            order("gateau", "pieces", 1.0, 1),
            order("snow", "portions", 10.0, 5));
    Production.Result result = asked(orders).result();
    assertThat(result.orders())
        .extracting(Sheet.Ordered::formula, Sheet.Ordered::count, Sheet.Ordered::entries)
        .containsExactly(tuple("snow", 7L, List.of(0, 2)), tuple("gateau", 1L, List.of(1)));
    List<Object> turned = new ArrayList<>(orders);
    java.util.Collections.reverse(turned);
    Production.Result other = asked(turned).result();
    assertThat(grams(other, "sugar-granulated"))
        .isEqualTo(grams(result, "sugar-granulated"), within(1e-9));
    assertThat(other.cost()).isEqualTo(result.cost());
  }

  @Test
  void batches_fit_the_mixer_and_the_tins_that_there_are() {
    List<Object> capacities =
        List.of(
            map("station", "Mixer", "name", "small", "most", "900 g"),
            map("station", "mixer", "name", "large", "least", "800 g", "most", "2 kg"),
            map("pan", "round-8x2-in", "count", 3));
    Production.Result result =
        asked(List.of(order("sponge", "pieces", 1.0, 10)), "capacities", capacities).result();
    assertThat(result.batches())
        .allSatisfy(
            row -> {
              assertThat(row.pieces()).isLessThanOrEqualTo(3 + 1e-9);
              assertThat(row.grams())
                  .isLessThanOrEqualTo(row.machine().equals("small") ? 900 : 2000);
            });
    assertThat(result.batches().stream().mapToDouble(r -> r.pieces() * r.number()).sum())
        .isEqualTo(10, within(1e-9));
    assertThat(made(result, "sponge").best()).isTrue();
  }

  @Test
  void whole_eggs_make_a_little_more_and_say_so() {
    List<Object> orders = List.of(order("sponge", "portions", 9.0, 1));
    Answer<Production.Result> exact = asked(orders);
    assertThat(exact.remarks()).extracting(Remark::code).contains("part-of-an-egg");
    assertThat(exact.result().batches().get(0).eggs()).isEqualTo(4.5, within(1e-9));
    Production.Result whole = asked(orders, "wholeEggs", true).result();
    assertThat(whole.batches().get(0).eggs()).isEqualTo(5, within(1e-9));
    assertThat(made(whole, "sponge").spareGrams()).isEqualTo(55, within(1e-6));
    assertThat(whole.spareCost().amount().signum()).isPositive();
  }

  @Test
  void allergens_stand_beside_each_order_as_the_regime_names_them() {
    Production.Result result =
        asked(
                List.of(order("gateau", "pieces", 1.0, 1), order("snow", "portions", 1.0, 1)),
                "regime",
                "EU")
            .result();
    assertThat(result.orders().get(0).contains())
        .extracting(Allergen::allergen)
        .contains("tree-nut", "egg", "milk", "cereal-gluten");
    assertThat(result.orders().get(1).contains())
        .extracting(Allergen::allergen)
        .containsExactly("egg");
  }

  @Test
  void what_can_hurt_is_told() {
    Map<String, Object> boiled = map("kind", "sugar-syrup", "low", "116 °C", "high", "121 °C");
    Map<String, Object> sweet =
        Shop.formula(
            "sweet",
            "sugar-granulated 200 g",
            "yield",
            map("portions", 4.0),
            "stages",
            List.of(map("id", "boil", "target", boiled)));
    assertThat(asked(List.of(map("formula", sweet, "portions", 4.0))).remarks())
        .filteredOn(remark -> remark.kind() == Remark.Kind.CAUTION)
        .extracting(Remark::code)
        .containsExactly("hot-syrup", "allergens-as-documented");
    assertThat(asked(List.of(order("snow", "portions", 1.0, 1))).remarks())
        .filteredOn(remark -> remark.kind() == Remark.Kind.CAUTION)
        .extracting(Remark::code)
        .containsExactly("egg", "allergens-as-documented");
  }

  @Test
  void a_whole_document_is_made_like_a_stored_one() {
    Map<String, Object> own = Shop.formula("tart", ">custard 200 g", "yield", map("portions", 4.0));
    Production.Result result =
        asked(List.of(map("formula", own, "portions", 8.0)), "due", "2026-05-02T07:30").result();
    assertThat(made(result, "custard").madeGrams()).isEqualTo(400, within(1e-6));
    assertThat(result.timeline()).isNotNull();
  }

  @Test
  void a_formula_wholly_in_percent_is_ordered_by_pieces_and_their_mass() {
    Map<String, Object> loaf = Shop.formula("loaf", "bread-flour 100 %; water 60 %");
    Map<String, Object> order =
        map("formula", loaf, "pieces", 8.0, "pieceMass", "800 g", "count", 2);
    assertThat(grams(asked(List.of(order)).result(), "bread-flour")).isEqualTo(8000, within(1e-6));
  }

  @Test
  void ten_thousand_lines_are_grouped() {
    List<Object> orders = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      orders.add(order(i % 2 == 0 ? "snow" : "gateau", "portions", 1.0 + i % 7, 1));
    }
    Production.Result result = asked(orders).result();
    assertThat(result.orders()).hasSize(14);
    assertThat(result.orders().stream().mapToLong(Sheet.Ordered::count).sum()).isEqualTo(10_000);
  }
}
