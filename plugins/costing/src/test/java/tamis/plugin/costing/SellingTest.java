package tamis.plugin.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.costing.Bench.formula;
import static tamis.plugin.costing.Bench.map;
import static tamis.plugin.costing.Bench.prices;
import static tamis.plugin.costing.Costs.asked;
import static tamis.plugin.costing.Costs.money;

import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;

/** What a formula is sold for, and what a rise of one price does. */
class SellingTest {
  @Test
  void a_rise_shows_in_total_and_price() {
    Map<String, Object> dish =
        formula("dish", "butter-unsalted 1 kg", "yield", map("portions", 2.0));
    Cost.Result result =
        asked(
                dish,
                "targetFoodCostPercent",
                30.0,
                "priceRise",
                map("ingredient", "butter-unsalted", "percent", 50.0))
            .result();
    assertThat(result.price()).isEqualTo(money("14.00 EUR"));
    assertThat(result.rise().total()).isEqualTo(money("12.60 EUR"));
    assertThat(result.rise().change()).isEqualTo(money("4.20 EUR"));
    assertThat(result.rise().changePercent()).isEqualTo(50, within(1e-9));
    assertThat(result.rise().price()).isEqualTo(money("21.00 EUR"));
    assertThat(result.rise().foodCostPercent()).isEqualTo(45, within(1e-9));
  }

  @Test
  void a_rise_of_eggs_is_a_rise_of_yolks_and_packaging_is_no_food() {
    Map<String, Object> rise = map("ingredient", "egg", "percent", 100.0);
    Cost.Result yolks = asked(formula("dish", "egg-yolk 6 each"), "priceRise", rise).result();
    assertThat(yolks.rise().change()).isEqualTo(money("1.44 EUR"));
    rise = map("ingredient", "cake-box", "percent", 100.0);
    Cost.Result cake = asked("cake", "priceRise", rise, "sellingPrice", "2.00 EUR").result();
    assertThat(cake.rise().change()).isEqualTo(money("0.42 EUR"));
    assertThat(cake.rise().foodCostPercent()).isEqualTo(cake.foodCostPercent());
  }

  @Test
  void a_price_is_for_a_portion_a_piece_a_kilogram_or_the_batch() {
    assertThat(priced("portion", "4")).isEqualTo(money("2.10 EUR"));
    assertThat(priced("piece", "4")).isEqualTo(money("1.05 EUR"));
    assertThat(priced("kilogram", "4")).isEqualTo(money("8.40 EUR"));
    assertThat(priced("batch", "4")).isEqualTo(money("8.40 EUR"));
  }

  private Money priced(String what, String portions) {
    Map<String, Object> yield = map("portions", Double.valueOf(portions), "pieces", 8.0);
    return asked(
            formula("dish", "butter-unsalted 1 kg", "yield", yield),
            "targetFoodCostPercent",
            100.0,
            "priceFor",
            what)
        .result()
        .price();
  }

  @Test
  void a_price_that_says_no_yield_is_held_beside_the_published_lists() {
    Map<String, Object> pie = formula("pie", "apple 1 kg; leek 1 kg");
    Answer<Cost.Result> answer =
        asked(pie, "prices", prices("apple 1 kg 2.00 EUR; leek 1 kg 2.00 EUR"));
    assertThat(answer.result().total()).isEqualTo(money("4.00 EUR"));
    assertThat(answer.remarks())
        .filteredOn(remark -> remark.code().equals("yield-not-said"))
        .singleElement()
        .satisfies(remark -> assertThat(remark.message()).contains("`apple`", "76 to 78 %"));
    answer = asked(pie, "prices", prices("apple 1 kg 2.00 EUR 100; leek 1 kg 2.00 EUR"));
    assertThat(answer.remarks()).extracting(Remark::code).doesNotContain("yield-not-said");
  }
}
