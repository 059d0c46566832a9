package tamis.plugin.costing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.costing.Bench.formula;
import static tamis.plugin.costing.Bench.map;
import static tamis.plugin.costing.Bench.prices;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Why there is no cost: all reasons at once, each where it stands. */
class CostRefusalsTest {

  private List<Fault> faults(Object formula, Object... more) {
    Map<String, Object> input = map("formula", formula);
    input.putAll(map(more));
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Bench.shop().calculate("cost", input));
    assertThat(refusal).isNotNull();
    return refusal.faults();
  }

  @Test
  void two_currencies_without_a_rate_are_refused() {
    assertThat(faults("cream", "prices", prices("butter-unsalted 1 kg 9.00 USD")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/rates"));
  }

  @Test
  void all_that_is_wrong_with_the_prices_is_told_at_once() {
    List<Object> prices =
        List.of(
            map("ingredient", "butter-unsalted", "pack", "1 kg", "price", "-1 EUR"),
            map("ingredient", "butter-unsalted", "pack", "as needed", "price", "1 EUR"),
            map("ingredient", "egg", "pack", "1 kg", "price", "1"),
            map("ingredient", "salt", "pack", "1 kg", "price", "1 EUR", "yieldPercent", 0.0),
            map("ingredient", " ", "pack", "1 kg", "price", "1 EUR", "edible", "1 kg"),
            map(
                "ingredient",
                "water",
                "pack",
                "0 kg",
                "price",
                "1 XXQ",
                "edible",
                "2 kg",
                "purchased",
                "1 kg"));
    assertThat(faults("cream", "prices", prices))
        .extracting(Fault::pointer)
        .contains(
            "/prices/0/price",
            "/prices/1/pack",
            "/prices/2/price",
            "/prices/3/yieldPercent",
            "/prices/4/ingredient",
            "/prices/4/purchased",
            "/prices/5/price");
  }

  @Test
  void more_edible_than_bought_and_two_ways_of_yield_are_refused() {
    List<Object> prices =
        List.of(
            map(
                "ingredient",
                "water",
                "pack",
                "1 kg",
                "price",
                "1 EUR",
                "edible",
                "2 kg",
                "purchased",
                "1 kg",
                "yieldPercent",
                50.0));
    assertThat(faults("cream", "prices", prices))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/prices/0/edible", "/prices/0/yieldPercent");
  }

  @Test
  void a_price_told_twice_is_refused_by_its_name_and_by_its_food() {
    assertThat(
            faults(
                "cream",
                "prices",
                prices("butter-unsalted 1 kg 1 EUR; Butter-Unsalted 1 kg 2 EUR")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/prices/1/ingredient"));
    List<Object> twice =
        List.of(
            map("ingredient", "butter-unsalted", "pack", "1 kg", "price", "1 EUR"),
            map("ingredient", "unsalted butter", "pack", "1 kg", "price", "1 EUR"));
    assertThat(faults("cream", "prices", twice))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/prices/1/ingredient"));
  }

  @Test
  void a_price_of_what_nobody_knows_is_refused() {
    assertThat(faults("cream", "prices", prices("unicorn-milk 1 kg 1 EUR; buter 1 kg 1 EUR")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.UNKNOWN_INGREDIENT, "/prices/0/ingredient"),
            tuple(FaultCode.UNKNOWN_INGREDIENT, "/prices/1/ingredient"));
  }

  @Test
  void packs_that_do_not_measure_what_is_used_are_refused() {
    assertThat(faults("cake", "prices", prices("cake-box 1 kg 1 EUR; egg 3 m 1 EUR")))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/prices/0/pack", "/prices/1/pack");
  }

  @Test
  void several_ways_of_saying_the_price_are_refused() {
    assertThat(faults("cream", "targetFoodCostPercent", 30.0, "targetMarginPercent", 60.0))
        .extracting(Fault::code)
        .containsExactly(FaultCode.INCONSISTENT);
    assertThat(
            faults("cream", "sellingPrice", "0 EUR", "currency", "EURO", "rates", map("USD", 0.0)))
        .extracting(Fault::pointer)
        .contains("/currency");
    assertThat(
            faults("cream", "sellingPrice", "0 EUR", "currency", "ZZZ", "rates", map("USD", 0.0)))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/sellingPrice", "/currency", "/rates/USD");
    assertThat(faults("cream", "targetFoodCostPercent", 30.0, "priceFor", "piece"))
        .extracting(Fault::pointer)
        .containsExactly("/priceFor");
  }

  @Test
  void stages_that_cannot_be_meant_are_refused() {
    List<Object> stages =
        List.of(
            map("stage", "syrop", "duration", "1 min"),
            map("stage", "syrup", "duration", "1 min"),
            map("stage", "cream/syrup", "duration", "1 min"));
    assertThat(faults("cake", "labour", map("ratePerHour", "1 EUR", "stages", stages)))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.UNKNOWN_STAGE, "/labour/stages/0/stage"),
            tuple(FaultCode.DUPLICATE, "/labour/stages/2/stage"));
    assertThat(faults("cake", "labour", map("ratePerHour", "-1 EUR")))
        .extracting(Fault::pointer)
        .containsExactly("/labour/ratePerHour");
    assertThat(faults("cake", "energy", map("pricePerKilowattHour", "-1 EUR", "total", "1 kWh")))
        .extracting(Fault::pointer)
        .containsExactly("/energy/pricePerKilowattHour");
  }

  @Test
  void power_over_no_time_and_a_stage_of_two_parts_are_refused() {
    Map<String, Object> dish =
        formula("dish", ">cream 80 g; egg 1 each", "stages", List.of(map("id", "syrup")));
    Map<String, Object> energy =
        map(
            "pricePerKilowattHour",
            "1 EUR",
            "stages",
            List.of(
                map("stage", "syrup", "energy", "1 kWh"),
                map("stage", "dish/syrup", "power", "1 kW")));
    assertThat(faults(dish, "energy", energy))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.INCONSISTENT, "/energy/stages/0/stage"),
            tuple(FaultCode.NO_SIZE, "/energy/stages/1/power"));
  }

  @ParameterizedTest
  @ValueSource(strings = {"salt", "nothing", "buter"})
  void a_rise_of_what_is_not_bought_is_refused(String name) {
    assertThat(faults("cream", "priceRise", map("ingredient", name, "percent", 5.0)))
        .extracting(Fault::code, Fault::pointer, Fault::allowed)
        .containsExactly(
            tuple(
                FaultCode.NOT_ALLOWED,
                "/priceRise/ingredient",
                "butter-unsalted, sugar-granulated"));
  }
}
