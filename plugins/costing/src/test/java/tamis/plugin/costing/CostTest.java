package tamis.plugin.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.costing.Bench.formula;
import static tamis.plugin.costing.Bench.map;
import static tamis.plugin.costing.Bench.prices;
import static tamis.plugin.costing.Bench.stage;
import static tamis.plugin.costing.Costs.asked;
import static tamis.plugin.costing.Costs.money;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Money;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.spi.Trees;

class CostTest extends CalculationContract<Cost.Input, Cost.Result> {
  @Override
  protected Calculation<Cost.Input, Cost.Result> calculation() {
    return new Cost();
  }

  @Override
  protected Plugin plugin() {
    return new CostingPlugin();
  }

  @Override
  protected Kitchen kitchen() {
    return Bench.shop();
  }

  @ParameterizedTest(name = "{3} of {0} at {1} is {4} ({6})")
  @CsvFileSource(resources = "/costing.csv", delimiter = '|', numLinesToSkip = 1)
  void worked_examples(
      String lines,
      String prices,
      String more,
      String pointer,
      double expected,
      double tolerance,
      String source) {
    Map<String, Object> input = map("prices", prices(prices));
    Map<String, Object> yield = map();
    for (String pair : more == null ? new String[0] : more.split(",")) {
      String[] both = pair.split("=");
      Object value = both[1].matches("[0-9.]+") ? Double.valueOf(both[1]) : both[1];
      if (both[0].equals("portions")) {
        yield.put("portions", value);
      } else if (both[0].startsWith("rates.")) {
        input.put("rates", map(both[0].substring(6), value));
      } else {
        input.put(both[0], value);
      }
    }
    input.put("formula", formula("dish", lines, "yield", yield));
    Kitchen bare = new Bench().open();
    Cost.Input read = new RecordReader(bare, Limits.usual()).read(Cost.Input.class, input);
    Object figure = Trees.leaves(Trees.of(new Cost().calculate(read, bare).result())).get(pointer);
    double found =
        figure instanceof String money
            ? Double.parseDouble(money.split(" ")[0])
            : ((Number) figure).doubleValue();
    assertThat(found).as("%s: %s", source, figure).isEqualTo(expected, within(tolerance + 1e-12));
  }

  @Test
  void shown_lines_add_up_to_the_shown_total_whatever_is_bought() {
    long seed = Long.getLong("tamis.seed", 20261125L);
    Random random = new Random(seed);
    List<String> foods =
        List.of("butter-unsalted", "sugar-granulated", "egg", "all-purpose-flour", "water", "salt");
    for (int round = 0; round < 300; round++) {
      StringBuilder lines = new StringBuilder();
      StringBuilder prices = new StringBuilder("cake-box 7 each 1.99 EUR");
      for (String food : foods) {
        lines.append(lines.length() == 0 ? "" : "; ");
        lines.append(food).append(' ').append(1 + random.nextInt(99_999) / 7.0).append(" g @mix");
        prices
            .append("; ")
            .append(food)
            .append(' ')
            .append(1 + random.nextInt(30))
            .append(" kg ")
            .append(random.nextInt(100_000) / 100.0)
            .append(" EUR ")
            .append(1 + random.nextInt(100));
      }
      Map<String, Object> dish =
          formula(
              "dish",
              lines.toString(),
              "packaging",
              List.of(map("item", "cake-box", "quantity", "3 each")),
              "stages",
              List.of(stage("mix", 7), stage("bake", 31)));
      Cost.Result result =
          asked(
                  dish,
                  "prices",
                  prices(prices.toString()),
                  "labour",
                  map("ratePerHour", "19.99 EUR"),
                  "energy",
                  map("pricePerKilowattHour", "0.333 EUR", "total", "3.7 kWh"))
              .result();
      String seen = "seed " + seed + ", round " + round;
      Money sum = Money.zero(result.total().currency());
      for (CostLine line : result.lines()) {
        sum = sum.plus(line.cost());
        assertThat(line.cost().amount().subtract(line.unrounded()).abs())
            .as(seen)
            .isLessThan(new BigDecimal("0.01"));
      }
      assertThat(sum).as(seen).isEqualTo(result.total());
      assertThat(
              result
                  .ingredients()
                  .plus(result.packaging())
                  .plus(result.labour())
                  .plus(result.energy()))
          .as(seen)
          .isEqualTo(result.total());
      assertThat(result.total().amount().subtract(result.unroundedTotal()).abs())
          .as(seen)
          .isLessThanOrEqualTo(new BigDecimal("0.0050000001"));
      StageRisk last = result.atRisk().get(result.atRisk().size() - 1);
      assertThat(last.spent()).as(seen).isEqualTo(result.total());
      assertThat(last.toCome().amount().signum()).as(seen).isZero();
      assertThat(result.atRisk()).as(seen).allMatch(risk -> risk.added().amount().signum() >= 0);
    }
  }

  @Test
  void the_cents_that_are_missing_go_to_the_largest_remainders() {
    Map<String, Object> dish = formula("dish", "water 1 g; salt 1 g; sugar-granulated 1 g");
    Cost.Result result =
        asked(
                dish,
                "prices",
                prices("water 3 g 1.00 EUR; salt 3 g 1.00 EUR; sugar-granulated 3 g 1.01 EUR"))
            .result();
    assertThat(result.total()).isEqualTo(money("1.00 EUR"));
    assertThat(result.lines())
        .extracting(CostLine::ingredient, line -> line.cost().toString())
        .containsExactly(
            tuple("water", "0.33 EUR"),
            tuple("salt", "0.33 EUR"),
            tuple("sugar-granulated", "0.34 EUR"));
  }

  @Test
  void a_batch_twice_the_size_costs_twice_as_much() {
    BigDecimal once = asked("cream").result().unroundedTotal();
    BigDecimal twice = asked("cream", "to", map("factor", 2.0)).result().unroundedTotal();
    assertThat(twice).isEqualByComparingTo(once.multiply(BigDecimal.valueOf(2)));
  }

  @Test
  void prices_of_the_request_go_before_the_shops_own_and_that_before_the_document() {
    Map<String, Object> nut =
        map(
            "id",
            "house-nut",
            "names",
            map("en", List.of("house nut")),
            "purchase",
            map("pack", "1 kg", "price", "9.00 EUR"));
    Kitchen bare = new Bench().withIngredient(nut).open();
    Kitchen shop = new Bench().withIngredient(nut).withPrices("house-nut 1 kg 8.00 EUR").open();
    Map<String, Object> input = map("formula", formula("dish", "house-nut 1 kg"));
    assertThat(total(bare, input)).isEqualTo(money("9.00 EUR"));
    assertThat(total(shop, input)).isEqualTo(money("8.00 EUR"));
    input.put("prices", List.of(map("ingredient", "House  Nut", "pack", "1 kg", "price", "7 EUR")));
    assertThat(total(shop, input)).as("by its name").isEqualTo(money("7.00 EUR"));
  }

  private static Money total(Kitchen kitchen, Map<String, Object> input) {
    return ((Cost.Result) kitchen.calculate("cost", input).result()).total();
  }

  @Test
  void packaging_is_counted_in_whole_ones() {
    Answer<Cost.Result> answer = asked("cake", "to", map("portions", 14.0));
    assertThat(answer.result().packaging()).isEqualTo(money("0.84 EUR"));
    assertThat(answer.remarks()).extracting(Remark::code).contains("whole-packaging");
  }

  @Test
  void a_part_of_a_whole_is_bought_as_the_whole() {
    CostLine yolk = asked(formula("dish", "egg-yolk 6 each")).result().lines().get(0);
    assertThat(yolk.boughtAs()).isEqualTo("egg");
    assertThat(yolk.purchasedGrams()).isEqualTo(300, within(1e-9));
  }

  @Test
  void a_missing_price_makes_the_cost_known_in_part() {
    Answer<Cost.Result> answer = asked(formula("dish", "egg 1 each; saffron 1 g; salt 5 g"));
    assertThat(answer.result().missing()).containsExactly("saffron", "salt");
    assertThat(answer.result().incomplete()).contains("/total", "/perPortion", "/price", "/atRisk");
    assertThat(answer.result().total()).isEqualTo(money("0.24 EUR"));
    assertThat(answer.result().lines().get(1).cost()).isNull();
    assertThat(answer.remarks()).extracting(Remark::code).contains("price-missing");
  }

  @Test
  void without_any_price_there_is_no_figure() {
    Answer<Cost.Result> answer = asked(formula("dish", "salt 5 g"));
    assertThat(answer.result().total()).isNull();
    assertThat(answer.result().incomplete()).contains("/total");
  }

  @Test
  void a_price_of_nothing_leaves_the_cost_known_in_part() {
    Answer<Cost.Result> answer =
        asked(formula("dish", "water 5 g"), "prices", prices("water 1 kg 0 EUR"));
    assertThat(answer.result().total()).isEqualTo(money("0 EUR"));
    assertThat(answer.result().incomplete()).contains("/total");
    assertThat(answer.result().missing()).containsExactly("water");
    assertThat(answer.remarks()).extracting(Remark::code).contains("price-zero");
  }

  @Test
  void what_is_used_as_needed_is_told_and_not_costed() {
    Answer<Cost.Result> answer = asked(formula("dish", "egg 1 each; butter-unsalted as needed"));
    assertThat(answer.remarks()).extracting(Remark::code).contains("as-needed-not-costed");
    assertThat(answer.result().lines().get(1).cost()).isNull();
    assertThat(answer.result().incomplete()).isEmpty();
  }

  @Test
  void a_price_of_the_shop_that_cannot_be_weighed_is_told_and_not_used() {
    Kitchen kitchen = new Bench().withPrices("egg-yolk 3 m 1.00 EUR").open();
    Answer<?> answer = kitchen.calculate("cost", map("formula", formula("d", "egg-yolk 1 g")));
    assertThat(answer.remarks())
        .extracting(Remark::code)
        .contains("price-not-usable", "price-missing");
  }

  @Test
  void a_price_below_the_smallest_coin_is_counted_and_told() {
    Object dish = formula("dish", "egg 100 g");
    Answer<Cost.Result> yen = asked(dish, "prices", prices("egg 1 kg 310.5 JPY"));
    assertThat(yen.result().unroundedTotal()).isEqualByComparingTo("31.05");
    assertThat(yen.remarks())
        .filteredOn(remark -> remark.code().equals("price-finer-than-coin"))
        .singleElement()
        .satisfies(remark -> assertThat(remark.message()).endsWith("egg 310.5 JPY"));
    assertThat(asked(dish, "prices", prices("egg 1 kg 310.50 USD")).remarks())
        .extracting(Remark::code)
        .doesNotContain("price-finer-than-coin");
  }
}
