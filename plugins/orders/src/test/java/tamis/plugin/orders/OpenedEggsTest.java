package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;
import static tamis.plugin.orders.Shop.prices;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.spi.Kitchen;

/** Eggs that are broken for the day, with yolks and whites on hand: nothing appears or vanishes. */
class OpenedEggsTest {
  private static final double YOLK = 17;
  private static final double WHITE = 33;
  private static final double EGG = 50;

  private static Kitchen shop(double egg, double yolk, double white) {
    return new Shop()
        .with("e", "egg " + egg + " g", "yield", map("portions", 1.0))
        .with("y", "egg-yolk " + yolk + " g", "yield", map("portions", 1.0))
        .with("w", "egg-white " + white + " g", "yield", map("portions", 1.0))
        .open();
  }

  private static Production.Result asked(
      Kitchen kitchen, List<String> orders, List<Object> stock, String prices) {
    Map<String, Object> input =
        map("orders", orders.stream().map(one -> order(one, "portions", 1.0, 1)).toList());
    if (!stock.isEmpty()) {
      input.put("stock", stock);
    }
    if (!prices.isEmpty()) {
      input.put("prices", prices(prices));
    }
    return (Production.Result) kitchen.calculate("production", input).result();
  }

  private static Map<String, Object> onHand(String ingredient, double grams) {
    return map("ingredient", ingredient, "quantity", grams + " g");
  }

  private static double left(Production.Result result, String ingredient) {
    return result.byProducts().stream()
        .filter(one -> one.ingredient().equals(ingredient))
        .mapToDouble(Sheet.Left::grams)
        .sum();
  }

  private static double made(Production.Result result, String ingredient) {
    return result.byProducts().stream()
        .filter(one -> one.ingredient().equals(ingredient))
        .mapToDouble(Sheet.Left::madeGrams)
        .sum();
  }

  private static double stockLeft(Production.Result result, String ingredient) {
    return result.stockLeft().stream()
        .filter(one -> ingredient.equals(one.ingredient()))
        .mapToDouble(Sheet.StockLeft::grams)
        .sum();
  }

  private static double fromStock(Production.Result result, String ingredient) {
    return result.ingredients().stream()
        .filter(one -> one.ingredient().equals(ingredient))
        .mapToDouble(Sheet.Used::fromStockGrams)
        .sum();
  }

  private static double bought(Production.Result result, String item) {
    return result.purchases().stream()
        .filter(one -> one.item().equals(item))
        .mapToDouble(one -> one.grams() == null ? 0 : one.grams())
        .sum();
  }

  @Test
  void made_is_what_the_eggs_give_that_are_really_broken() {
    Production.Result result = asked(shop(50, 170, 132), List.of("y", "w"), List.of(), "");
    assertThat(made(result, "egg-white")).as("ten eggs").isEqualTo(330, within(1e-6));
    assertThat(made(result, "egg-yolk")).as("the same ten").isEqualTo(170, within(1e-6));
    assertThat(left(result, "egg-white")).isEqualTo(198, within(1e-6));
    assertThat(left(result, "egg-yolk")).isZero();
    assertThat(bought(result, "egg")).isEqualTo(500, within(1e-6));
  }

  @Test
  void whites_on_hand_are_kept_while_fresh_ones_are_over() {
    Production.Result result =
        asked(shop(50, 170, 132), List.of("y", "w"), List.of(onHand("egg-white", 100)), "");
    assertThat(left(result, "egg-white")).isEqualTo(198, within(1e-6));
    assertThat(stockLeft(result, "egg-white")).isEqualTo(100, within(1e-6));
    assertThat(fromStock(result, "egg-white")).isZero();
  }

  @Test
  void yolks_on_hand_break_no_egg() {
    Production.Result result =
        asked(
            shop(50, 170, 132),
            List.of("y", "w"),
            List.of(onHand("egg-yolk", 170)),
            "egg 30 each 7.20 EUR");
    assertThat(bought(result, "egg")).as("four for the whites").isEqualTo(200, within(1e-6));
    assertThat(left(result, "egg-white")).isZero();
    assertThat(left(result, "egg-yolk") + stockLeft(result, "egg-yolk"))
        .isEqualTo(68, within(1e-6));
  }

  @Test
  void a_part_that_is_bought_by_itself_breaks_no_egg() {
    Production.Result result =
        asked(
            shop(50, 170, 132),
            List.of("y", "w"),
            List.of(),
            "egg 30 each 7.20 EUR; egg-yolk 1 kg 9.00 EUR");
    assertThat(bought(result, "egg")).isEqualTo(200, within(1e-6));
    assertThat(bought(result, "egg-yolk")).as("four yolks are there").isEqualTo(102, within(1e-6));
    assertThat(left(result, "egg-white")).isZero();
  }

  @Test
  void fruit_is_bought_whole_for_zest_and_juice() {
    for (String fruit : List.of("lemon", "lime", "orange")) {
      Kitchen kitchen =
          new Shop().with("z", fruit + "-zest 12 g", "yield", map("portions", 1.0)).open();
      Production.Result result = asked(kitchen, List.of("z"), List.of(), "");
      assertThat(bought(result, fruit)).as(fruit).isPositive();
      assertThat(left(result, fruit + "-juice")).as(fruit).isPositive();
    }
  }

  @Test
  void eggs_broken_and_stock_are_what_is_used_and_left() {
    long seed = Long.getLong("tamis.seed", 12L);
    Random random = new Random(seed);
    for (int round = 0; round < 300; round++) {
      double[] need = new double[3];
      double[] stock = new double[3];
      List<String> orders = new ArrayList<>();
      List<Object> onHand = new ArrayList<>();
      String[] ids = {"egg", "egg-yolk", "egg-white"};
      for (int i = 0; i < 3; i++) {
        double size = 1 + random.nextInt(400);
        stock[i] = random.nextBoolean() ? 0 : 1 + random.nextInt(400);
        if (stock[i] > 0) {
          onHand.add(onHand(ids[i], stock[i]));
        }
        need[i] = size;
      }
      Kitchen kitchen = shop(need[0], need[1], need[2]);
      for (int i = 0; i < 3; i++) {
        if (random.nextInt(3) > 0) {
          orders.add(List.of("e", "y", "w").get(i));
        } else {
          need[i] = 0;
        }
      }
      if (orders.isEmpty()) {
        continue;
      }
      String price = random.nextBoolean() ? "" : "egg 30 each 7.20 EUR";
      Production.Result result = asked(kitchen, orders, onHand, price);
      double broken =
          Math.max(0, Math.max((need[1] - stock[1]) / YOLK, (need[2] - stock[2]) / WHITE));
      String seen = "seed " + seed + ", round " + round + ": " + orders + onHand + price;
      double[] parts = {0, YOLK, WHITE};
      for (int i = 1; i < 3; i++) {
        double over = left(result, ids[i]);
        double kept = stockLeft(result, ids[i]);
        assertThat(over + kept)
            .as(seen)
            .isEqualTo(broken * parts[i] + stock[i] - need[i], within(1e-6));
        assertThat(over).as(seen).isNotNegative();
        assertThat(kept).as(seen).isEqualTo(stock[i] - fromStock(result, ids[i]), within(1e-6));
        assertThat(Math.min(over, fromStock(result, ids[i]))).as(seen).isLessThan(1e-6);
        assertThat(bought(result, ids[i])).as(seen).isZero();
      }
      double eggs = need[0] + broken * EGG;
      assertThat(bought(result, "egg"))
          .as(seen)
          .isEqualTo(Math.max(0, eggs - stock[0]), within(1e-6));
      assertThat(stockLeft(result, "egg"))
          .as(seen)
          .isEqualTo(Math.max(0, stock[0] - eggs), within(1e-6));
    }
  }
}
