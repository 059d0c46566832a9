package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class BalancingTest extends CalculationContract<Balancing.Input, Balancing.Result> {
  private static final List<String> NUTRIENTS =
      List.of(
          "calories",
          "proteins",
          "calcium",
          "iron-in",
          "vitamin-a",
          "thiamine",
          "riboflavin",
          "niacin",
          "ascorbic");
  private static final double[] DAILY = {3, 70, 0.8, 12, 5, 1.8, 2.7, 18, 75};

  @Override
  protected Calculation<Balancing.Input, Balancing.Result> calculation() {
    return new Balancing();
  }

  @Override
  protected Plugin plugin() {
    return new BalancingPlugin();
  }

  private static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  private static Map<String, Object> own(String name, Object... composition) {
    return map("name", name, "composition", map(composition));
  }

  private static Map<String, Object> priced(String name, String price, Object... composition) {
    Map<String, Object> own = own(name, composition);
    own.put("pricePerKilogram", price);
    return own;
  }

  private static Map<String, Object> bound(String property, Object... more) {
    Map<String, Object> bound = map("property", property);
    bound.putAll(map(more));
    return bound;
  }

  private Answer<Balancing.Result> balanced(Object... input) {
    return answer(read(map(input)));
  }

  private List<Fault> faults(Object... input) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> balanced(input));
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }

  private static double grams(Balancing.Result result, String ingredient) {
    return result.lines().stream()
        .filter(line -> line.ingredient().equals(ingredient))
        .findFirst()
        .orElseThrow()
        .grams();
  }

  private static MixFigure figure(Balancing.Result result, String property) {
    return result.properties().stream()
        .filter(one -> one.property().equals(property))
        .findFirst()
        .orElseThrow();
  }

  @ParameterizedTest(name = "{0} of {1} % and {2} of {3} % to {4} %: {5} to {6}")
  @CsvFileSource(resources = "/pearson-square.csv", delimiter = '|', numLinesToSkip = 1)
  void two_components_come_out_as_by_the_square(
      String first,
      double firstFat,
      String second,
      double secondFat,
      double wanted,
      double firstParts,
      double secondParts,
      String source) {
    Balancing.Result result =
        balanced(
                "ingredients", List.of(own(first, "fat", firstFat), own(second, "fat", secondFat)),
                "mass", "10 kg",
                "bounds", List.of(bound("fat", "target", wanted)))
            .result();
    double share = firstParts / (firstParts + secondParts);
    assertThat(grams(result, first)).as(source).isEqualTo(10_000 * share, within(1e-3));
    assertThat(grams(result, second)).as(source).isEqualTo(10_000 * (1 - share), within(1e-3));
    assertThat(result.value()).isEqualTo(0, within(1e-9));
  }

  /** 8 = 0.35 c + 0.03 m and 10 = 0.05 c + 0.09 m + 0.96 p of 100 = c + m + p, solved by hand. */
  @Test
  void three_components_come_out_as_by_standard_algebra() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(
                    own("cream", "fat", 35.0, "msnf", 5.0),
                    own("milk", "fat", 3.0, "msnf", 9.0),
                    own("powder", "fat", 0.0, "msnf", 96.0)),
                "mass",
                "100 g",
                "bounds",
                List.of(
                    bound("fat", "low", 8.0, "high", 8.0),
                    bound("msnf", "low", 10.0, "high", 10.0)),
                "aim",
                "most",
                "of",
                "fat")
            .result();
    // powder = 100 - c - m; 0.05 c + 0.09 m + 0.96 (100 - c - m) = 10, so 0.91 c + 0.87 m = 86
    // with c = (8 - 0.03 m) / 0.35: 20.8 - 0.078 m + 0.87 m = 86, m = 65.2 / 0.792
    double milk = 65.2 / 0.792;
    double cream = (8 - 0.03 * milk) / 0.35;
    assertThat(grams(result, "milk")).isEqualTo(milk, within(1e-5));
    assertThat(grams(result, "cream")).isEqualTo(cream, within(1e-5));
    assertThat(grams(result, "powder")).isEqualTo(100 - milk - cream, within(1e-5));
  }

  /**
   * The cheapest diet of Stigler's 77 foods: Dantzig, The Diet Problem, Interfaces 20 (1990) 43,
   * and Garille and Gass, Operations Research 49 (2001) 1, tell wheat flour, liver, cabbage,
   * spinach and navy beans for 39.69 dollars a year (39.66 with the table as printed). A "100 g" is
   * a dollar's worth here.
   */
  @Test
  void the_cheapest_diet_is_the_published_one() throws Exception {
    Balancing.Result result = diet().result();
    assertThat(result.value() * 365).isEqualTo(39.66, within(0.005));
    assertThat(result.lines())
        .filteredOn(line -> line.grams() > 1e-6)
        .extracting(MixLine::ingredient)
        .containsExactlyInAnyOrder(
            "wheat flour enriched", "liver beef", "cabbage", "spinach", "navy beans dried");
    assertThat(grams(result, "wheat flour enriched") / 100 * 365).isEqualTo(10.774, within(0.001));
    assertThat(grams(result, "liver beef") / 100 * 365).isEqualTo(0.691, within(0.001));
    assertThat(grams(result, "cabbage") / 100 * 365).isEqualTo(4.093, within(0.001));
    assertThat(grams(result, "spinach") / 100 * 365).isEqualTo(1.828, within(0.001));
    assertThat(grams(result, "navy beans dried") / 100 * 365).isEqualTo(22.275, within(0.001));
  }

  /** Shadow prices: at the optimum they pay for the whole diet (strong duality). */
  @Test
  void shadow_prices_pay_for_the_whole_diet() throws Exception {
    Balancing.Result result = diet().result();
    assertThat(result.binding())
        .extracting(BindingBound::pointer)
        .containsExactlyInAnyOrder(
            "/bounds/0/low", "/bounds/2/low", "/bounds/4/low", "/bounds/6/low", "/bounds/8/low");
    double paid = 0;
    for (BindingBound one : result.binding()) {
      paid += one.shadowPrice() * one.limit();
      // a unit and what it gives agree with the slope at the bound, or the slope grows less
      assertThat(one.gain()).isLessThanOrEqualTo(one.shadowPrice() * one.relaxedBy() + 1e-9);
    }
    assertThat(paid).isEqualTo(result.value(), within(1e-6));
    assertThat(price(result, "calcium")).isEqualTo(0.031738, within(1e-6));
    assertThat(price(result, "riboflavin")).isEqualTo(0.016358, within(1e-6));
    assertThat(price(result, "calories")).isEqualTo(0.008765, within(1e-6));
    assertThat(price(result, "vitamin-a")).isEqualTo(0.000400, within(1e-6));
    assertThat(price(result, "ascorbic")).isEqualTo(0.000144, within(1e-6));
  }

  private static double price(Balancing.Result result, String property) {
    return result.binding().stream()
        .filter(one -> one.bound().startsWith(property + " "))
        .findFirst()
        .orElseThrow()
        .shadowPrice();
  }

  private Answer<Balancing.Result> diet() throws Exception {
    List<Object> foods = new ArrayList<>();
    Path table = Path.of(BalancingTest.class.getResource("/cost-of-subsistence.csv").toURI());
    List<String> lines = Files.readAllLines(table);
    for (String line : lines.subList(1, lines.size())) {
      String[] cells = line.split(",");
      Map<String, Object> composition = new LinkedHashMap<>();
      for (int i = 0; i < NUTRIENTS.size(); i++) {
        composition.put(NUTRIENTS.get(i), Double.valueOf(cells[i + 1]));
      }
      foods.add(map("name", cells[0], "composition", composition, "pricePerKilogram", "10 USD"));
    }
    List<Object> bounds = new ArrayList<>();
    for (int i = 0; i < DAILY.length; i++) {
      bounds.add(bound(NUTRIENTS.get(i), "low", DAILY[i], "per", "whole"));
    }
    assertThat(foods).hasSize(77);
    return balanced("ingredients", foods, "bounds", bounds);
  }

  @Test
  void a_binding_bound_says_what_a_unit_would_give() {
    // cheap has 2 % fat at 1 EUR, dear 10 % at 5 EUR: each percent of fat costs 0.50 EUR a kilogram
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(priced("cheap", "1 EUR", "fat", 2.0), priced("dear", "5 EUR", "fat", 10.0)),
                "bounds",
                List.of(bound("fat", "low", 6.0)))
            .result();
    assertThat(result.value()).isEqualTo(3, within(1e-9));
    assertThat(result.cost()).hasToString("3.00 EUR");
    assertThat(result.binding())
        .singleElement()
        .satisfies(
            one -> {
              assertThat(one.bound()).isEqualTo("fat at least 6 %");
              assertThat(one.gain()).isEqualTo(0.5, within(1e-9));
              assertThat(one.shadowPrice()).isEqualTo(0.5, within(1e-7));
              assertThat(one.words())
                  .isEqualTo("relaxing `fat at least 6 %` by 1 % would give 0.5 EUR/kg less");
            });
    assertThat(figure(result, "fat").atBound()).isEqualTo(Side.LOW);
  }

  @Test
  void bounds_of_an_ingredient_are_kept_and_told_in_its_own_unit() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(
                    withBounds(priced("cheap", "1 EUR", "fat", 2.0), "high", "300 g"),
                    withBounds(priced("dear", "5 EUR", "fat", 10.0), "lowPercent", 10.0)),
                "mass",
                "2 kg")
            .result();
    assertThat(grams(result, "cheap")).isEqualTo(300, within(1e-6));
    assertThat(result.lines().get(0).atBound()).isEqualTo(Side.HIGH);
    assertThat(result.lines().get(1).atBound()).isNull();
    // 20 g more of the cheap one in 2 kg: 1 % of 4 EUR a kilogram
    assertThat(result.binding())
        .extracting(BindingBound::bound, BindingBound::relaxedBy)
        .containsExactly(tuple("cheap at most 300 g", 20.0));
    assertThat(result.binding().get(0).gain()).isEqualTo(0.04, within(1e-9));
  }

  private static Map<String, Object> withBounds(Map<String, Object> item, Object... bounds) {
    item.putAll(map(bounds));
    return item;
  }

  @Test
  void nearest_takes_the_weight_into_account_and_then_the_price() {
    List<Object> items =
        List.of(
            priced("a", "4 EUR", "fat", 10.0, "protein", 0.0),
            priced("b", "3 EUR", "fat", 0.0, "protein", 10.0),
            priced("c", "1 EUR", "fat", 0.0, "protein", 10.0));
    List<Object> bounds =
        List.of(bound("fat", "target", 8.0, "weight", 3.0), bound("protein", "target", 8.0));
    Balancing.Result result = balanced("ingredients", items, "bounds", bounds).result();
    // fat and protein come to 10 together: fat is met, protein is 6 short
    assertThat(figure(result, "fat").deviation()).isEqualTo(0, within(1e-6));
    assertThat(figure(result, "protein").deviation()).isEqualTo(-6, within(1e-6));
    assertThat(result.value()).isEqualTo(6, within(1e-6));
    assertThat(grams(result, "b")).as("c is as good and cheaper").isEqualTo(0, within(1e-2));
  }

  @Test
  void a_mix_of_the_tables_is_balanced_and_comes_to_what_it_says() {
    Answer<Balancing.Result> answer = answer(new Balancing().examples().get(0));
    Balancing.Result result = answer.result();
    assertThat(result.grams()).isEqualTo(5_000, within(1e-3));
    double fat = 0;
    double[] per100 = {3.25, 36.08, 0.77, 0.0, 0.0};
    for (int i = 0; i < per100.length; i++) {
      fat += result.lines().get(i).grams() * per100[i] / 5_000;
    }
    assertThat(figure(result, "fat").value()).isEqualTo(fat, within(1e-6)).isBetween(7.999, 10.001);
    assertThat(figure(result, "sweetness").valueLow())
        .isLessThan(figure(result, "sweetness").value());
    assertThat(answer.remarks())
        .extracting(Remark::code)
        .contains("sweetness-differs", "mix-on-paper");
    assertThat(answer.sources()).isNotEmpty();
  }

  @Test
  void milk_solids_and_sweetness_follow_from_the_tables() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(map("ingredient", "milk-powder-skim")),
                "aim",
                "most",
                "of",
                "milk-solids-not-fat")
            .result();
    assertThat(result.value()).as("100 - 3.16 - 0.77").isEqualTo(96.07, within(1e-6));
    assertThat(figure(result, "sweetness").value())
        .as("51.98 % lactose at 16")
        .isEqualTo(51.98 * 0.16, within(1e-6));
    assertThat(figure(result, "solids").value()).isEqualTo(96.84, within(1e-6));
    Balancing.Result sugar =
        balanced(
                "ingredients",
                List.of(map("ingredient", "dextrose")),
                "aim",
                "most",
                "of",
                "sweetness")
            .result();
    assertThat(sugar.value()).as("91 % glucose at 74").isEqualTo(91 * 0.74, within(1e-6));
  }

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
  void prices_of_the_request_are_used_by_their_packs() {
    Balancing.Result result =
        balanced(
                "ingredients",
                List.of(map("ingredient", "milk-whole"), map("ingredient", "cream-heavy")),
                "mass",
                "1 kg",
                "bounds",
                List.of(bound("fat", "low", 10.0, "high", 10.0)),
                "prices",
                List.of(
                    map("ingredient", "milk-whole", "pack", "10 kg", "price", "9 EUR"),
                    map("ingredient", "cream-heavy", "pack", "2 kg", "price", "10 EUR")))
            .result();
    double cream = (10 - 3.25) / (36.08 - 3.25);
    assertThat(result.value()).isEqualTo(cream * 5 + (1 - cream) * 0.9, within(1e-6));
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
  void bounds_that_exclude_each_other_are_named_and_no_other() {
    List<Fault> faults =
        faults(
            "ingredients",
            List.of(
                priced("lean", "1 EUR", "fat", 1.0, "water", 90.0),
                priced("rich", "4 EUR", "fat", 40.0, "water", 55.0)),
            "bounds",
            List.of(bound("fat", "low", 20.0, "high", 30.0), bound("water", "low", 80.0)),
            "costAtMost",
            "3.90 EUR");
    assertThat(faults)
        .extracting(Fault::code, Fault::pointer)
        .containsExactlyInAnyOrder(
            tuple(FaultCode.IMPOSSIBLE, "/bounds/0/low"),
            tuple(FaultCode.IMPOSSIBLE, "/bounds/1/low"));
    // 80 % of water is 10/35 rich: fat 1 + 39 × 10/35 = 12.14
    assertThat(faults.get(0).message())
        .contains("`fat at least 20 %` cannot be kept together with water at least 80 %")
        .contains("12.14 % or less");
  }

  /** Whatever is refused: without any one bound that is named, the rest can be kept. */
  @Test
  void the_named_set_is_a_smallest_one() {
    Random random = new Random(20261125);
    int refused = 0;
    for (int round = 0; round < 300; round++) {
      List<Map<String, Object>> items = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        items.add(
            priced(
                "i" + i,
                "1 EUR",
                "fat",
                random.nextInt(50) + 0.0,
                "water",
                random.nextInt(50) + 0.0,
                "ash",
                random.nextInt(10) + 0.0));
      }
      List<Map<String, Object>> bounds = new ArrayList<>();
      for (String property : List.of("fat", "water", "ash")) {
        double low = random.nextInt(40);
        bounds.add(bound(property, "low", low, "high", low + random.nextInt(10)));
      }
      Refusal refusal =
          catchThrowableOfType(
              Refusal.class, () -> balanced("ingredients", items, "bounds", bounds));
      if (refusal == null) {
        continue;
      }
      refused++;
      List<String> named = refusal.faults().stream().map(Fault::pointer).toList();
      assertThat(refusal.faults()).allMatch(fault -> fault.code() == FaultCode.IMPOSSIBLE);
      assertThat(isPossible(items, only(bounds, named, null))).as("%s alone", named).isFalse();
      for (String left : named) {
        assertThat(isPossible(items, only(bounds, named, left)))
            .as("%s without %s", named, left)
            .isTrue();
      }
    }
    assertThat(refused).isGreaterThan(50);
  }

  private static List<Map<String, Object>> only(
      List<Map<String, Object>> bounds, List<String> named, String without) {
    List<Map<String, Object>> only = new ArrayList<>();
    for (int i = 0; i < bounds.size(); i++) {
      Map<String, Object> bound = map("property", bounds.get(i).get("property"));
      for (String side : List.of("low", "high")) {
        String pointer = "/bounds/" + i + "/" + side;
        if (named.contains(pointer) && !pointer.equals(without)) {
          bound.put(side, bounds.get(i).get(side));
        }
      }
      if (bound.size() > 1) {
        only.add(bound);
      }
    }
    return only;
  }

  private boolean isPossible(List<Map<String, Object>> items, List<Map<String, Object>> bounds) {
    return catchThrowableOfType(
            Refusal.class, () -> balanced("ingredients", items, "bounds", bounds))
        == null;
  }

  /** No mix on a fine grid that keeps the bounds is cheaper. */
  @Test
  void no_mix_on_a_grid_is_cheaper() {
    Random random = new Random(7);
    int solved = 0;
    for (int round = 0; round < 100; round++) {
      double[] fat = random.doubles(3, 0, 40).toArray();
      double[] cost = random.doubles(3, 1, 9).map(c -> Math.rint(c * 100) / 100).toArray();
      double low = random.nextInt(25);
      List<Object> items = new ArrayList<>();
      for (int i = 0; i < 3; i++) {
        items.add(priced("i" + i, cost[i] + " EUR", "fat", fat[i]));
      }
      Object[] input = {
        "ingredients", items, "bounds", List.of(bound("fat", "low", low, "high", low + 5))
      };
      if (catchThrowableOfType(Refusal.class, () -> balanced(input)) != null) {
        continue;
      }
      solved++;
      double best = balanced(input).result().value();
      for (int a = 0; a <= 100; a++) {
        for (int b = 0; a + b <= 100; b++) {
          double f = (a * fat[0] + b * fat[1] + (100 - a - b) * fat[2]) / 100;
          double c = (a * cost[0] + b * cost[1] + (100 - a - b) * cost[2]) / 100;
          if (f >= low && f <= low + 5) {
            assertThat(best).isLessThanOrEqualTo(c + 1e-6);
          }
        }
      }
    }
    assertThat(solved).isGreaterThan(30);
  }

  @Test
  void the_order_of_ingredients_does_not_matter() {
    Balancing.Input input = new Balancing().examples().get(0);
    List<MixItem> turned = new ArrayList<>(input.ingredients());
    java.util.Collections.reverse(turned);
    Balancing.Result one = answer(input).result();
    Balancing.Result two =
        answer(
                new Balancing.Input(
                    turned, input.mass(), input.bounds(), null, null, null, List.of()))
            .result();
    assertThat(two.value()).isEqualTo(one.value(), within(1e-7));
    one.lines()
        .forEach(
            line ->
                assertThat(grams(two, line.ingredient())).isEqualTo(line.grams(), within(1e-3)));
  }

  @Test
  void what_has_no_end_names_what_grows() {
    assertThat(
            faults(
                "ingredients",
                List.of(own("a", "fat", 5.0), own("b", "fat", 0.0)),
                "bounds",
                List.of(bound("fat", "low", 10.0, "per", "whole")),
                "aim",
                "most",
                "of",
                "fat"))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).isEqualTo(FaultCode.IMPOSSIBLE);
              assertThat(fault.pointer()).isEqualTo("/mass");
              assertThat(fault.message())
                  .contains("no end", "a could go in")
                  .doesNotContain("b could");
            });
  }

  @Test
  void more_lows_than_there_is_room_for_are_refused() {
    assertThat(
            faults(
                "ingredients",
                List.of(
                    withBounds(priced("a", "1 EUR", "fat", 1.0), "low", "600 g"),
                    withBounds(priced("b", "1 EUR", "fat", 1.0), "low", "500 g"))))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/ingredients/0/low", "/ingredients/1/low");
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

  @Test
  void a_thousand_ingredients_with_bounds_of_their_own_are_balanced() {
    Random random = new Random(3);
    List<Object> items = new ArrayList<>();
    for (int i = 0; i < 1_000; i++) {
      items.add(
          withBounds(
              priced(
                  "i" + i,
                  Math.rint(random.nextDouble() * 900 + 100) / 100 + " EUR",
                  "fat",
                  random.nextDouble() * 40,
                  "water",
                  random.nextDouble() * 60),
              "high",
              "20 g",
              "low",
              i % 50 == 0 ? "1 g" : "0 g"));
    }
    assertThatCode(
            () -> {
              Balancing.Result result =
                  balanced(
                          "ingredients",
                          items,
                          "mass",
                          "1 kg",
                          "bounds",
                          List.of(
                              bound("fat", "low", 10.0, "high", 12.0),
                              bound("water", "high", 30.0)))
                      .result();
              assertThat(result.grams()).isEqualTo(1_000, within(1e-3));
              assertThat(result.lines()).allMatch(line -> line.grams() <= 20.001);
              assertThat(figure(result, "fat").value()).isBetween(9.99999, 12.00001);
            })
        .doesNotThrowAnyException();
  }
}
