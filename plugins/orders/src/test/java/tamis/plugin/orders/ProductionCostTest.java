package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.orders.Mornings.asked;
import static tamis.plugin.orders.Mornings.made;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;
import static tamis.plugin.orders.Shop.prices;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** What the day and each order cost. */
class ProductionCostTest {
  @Test
  void what_one_order_costs_is_what_the_formula_costs() {
    Production.Result result = asked(List.of(order("gateau", "pieces", 3.0, 2))).result();
    Found cost =
        Found.of(
            Shop.ofCakes()
                .calculate("cost", map("formula", "gateau", "to", map("factor", 6.0)))
                .result());
    assertThat(result.cost()).isEqualTo(Money.parse(cost.textOr("total", "")));
    assertThat(result.orders().get(0).cost()).isEqualTo(result.cost());
  }

  /** Σ orders + what is over − what stock gave = cost of all; stock never below nothing. */
  @Test
  void costs_stock_and_by_products_balance_whatever_is_ordered() {
    long seed = Long.getLong("tamis.seed", 77L);
    Random random = new Random(seed);
    List<String> formulas = List.of("custard", "snow", "sponge", "gateau", "trifle");
    for (int round = 0; round < 60; round++) {
      List<Object> orders = new ArrayList<>();
      for (int i = 0; i <= random.nextInt(8); i++) {
        orders.add(
            order(
                formulas.get(random.nextInt(5)),
                "portions",
                1 + random.nextInt(30) / 2.0,
                1 + random.nextInt(4)));
      }
      List<Object> stock = new ArrayList<>();
      for (String one : List.of("egg", "sugar-granulated", "milk-whole")) {
        stock.add(map("ingredient", one, "quantity", random.nextInt(900) + " g"));
      }
      stock.add(map("formula", "custard", "quantity", random.nextInt(900) + " g"));
      Production.Result result =
          asked(
                  orders,
                  "stock",
                  stock,
                  "wholeEggs",
                  random.nextBoolean(),
                  "capacities",
                  List.of(map("station", "mixer", "least", "200 g", "most", "1.1 kg")))
              .result();
      assertBalanced(result, "seed " + seed + ", round " + round + ": " + orders);
    }
  }

  private static void assertBalanced(Production.Result result, String seen) {
    Money sum = result.spareCost().minus(result.stockCost());
    for (Sheet.Ordered one : result.orders()) {
      sum = sum.plus(one.cost());
    }
    assertThat(sum).as(seen).isEqualTo(result.cost());
    assertThat(result.stockLeft()).as(seen).allMatch(one -> one.grams() >= 0);
    assertThat(result.ingredients())
        .as(seen)
        .allMatch(one -> one.fromStockGrams() >= 0 && one.fromStockGrams() <= one.grams());
    assertThat(result.byProducts())
        .as(seen)
        .allMatch(
            one ->
                one.grams() >= 0
                    && Math.abs(one.madeGrams() - one.usedGrams() - one.grams()) < 1e-9);
    Map<String, Double> made = new LinkedHashMap<>();
    result.batches().forEach(b -> made.merge(b.formula(), b.factor() * b.number(), Double::sum));
    for (Sheet.Made one : result.made()) {
      assertThat(one.madeGrams() + one.fromStockGrams())
          .as(seen)
          .isGreaterThanOrEqualTo(one.neededGrams() - 1e-6)
          .isEqualTo(one.neededGrams() + one.spareGrams(), within(1e-6));
      assertThat(made.containsKey(one.formula())).as(seen).isEqualTo(one.madeGrams() > 0);
    }
    assertThat(result.purchases()).as(seen).allMatch(one -> one.packs() > 0);
  }

  @Test
  void a_missing_price_makes_the_cost_known_in_part() {
    Kitchen bare =
        new Shop().with("snow", "egg-white 1 each; salt 2 g", "yield", map("portions", 1.0)).open();
    Answer<?> answer =
        bare.calculate(
            "production",
            map(
                "orders",
                List.of(order("snow", "portions", 1.0, 1)),
                "prices",
                prices("egg 30 each 7.20 EUR")));
    Production.Result result = (Production.Result) answer.result();
    assertThat(result.missing()).containsExactly("salt");
    assertThat(result.incomplete()).contains("/cost", "/orders/0/cost");
    assertThat(answer.remarks())
        .extracting(Remark::code)
        .contains("price-missing", "pack-not-known");
    answer =
        bare.calculate("production", map("orders", List.of(order("snow", "portions", 1.0, 1))));
    assertThat(((Production.Result) answer.result()).cost()).isNull();
  }

  @Test
  void a_price_of_nothing_is_told() {
    assertThat(
            asked(
                    List.of(order("snow", "portions", 1.0, 1)),
                    "prices",
                    prices("sugar-granulated 1 kg 0 EUR"))
                .remarks())
        .extracting(Remark::code)
        .contains("price-zero");
  }
}
