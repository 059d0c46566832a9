package tamis.plugin.dough;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;
import tamis.plugin.dough.BakersPercentage.Input;
import tamis.plugin.dough.BakersPercentage.Result;

class BakersPercentageTest extends CalculationContract<Input, Result> {
  private static final double GRAMS_PER_POUND = 453.59237;

  @Override
  protected Calculation<Input, Result> calculation() {
    return new BakersPercentage();
  }

  @Override
  protected Plugin plugin() {
    return new DoughPlugin();
  }

  @ParameterizedTest(name = "{0}: {3} is {4} ({6})")
  @CsvFileSource(resources = "/bakers-percentage.csv", numLinesToSkip = 1)
  void percentages_match_the_worked_examples(
      String example,
      String lines,
      String to,
      String figure,
      double expected,
      double tolerance,
      String source) {
    Result result = result(Doughs.input(Doughs.formula(lines), to));

    assertThat(figure(result, figure)).as(source).isCloseTo(expected, within(tolerance));
  }

  private static double figure(Result result, String figure) {
    if (figure.startsWith("percent of ")) {
      return line(result, figure.substring(11)).percent();
    }
    if (figure.startsWith("grams of ")) {
      return line(result, figure.substring(9)).grams();
    }
    return switch (figure) {
      case "flourGrams" -> result.flourGrams();
      case "totalGrams" -> result.totalGrams();
      case "totalPercent" -> result.totalPercent();
      case "hydrationPercent" -> result.hydrationPercent();
      case "totalWaterPercent" -> result.totalWaterPercent();
      default -> throw new IllegalArgumentException(figure);
    };
  }

  private static PercentLine line(Result result, String ingredient) {
    return result.lines().stream()
        .filter(line -> ingredient.equals(line.ingredient()))
        .findFirst()
        .orElseThrow();
  }

  /** The manual divides 169.2 by 300 and so takes 0.6 × each percentage, 101.5 lb in all. */
  @Test
  void the_misprint_of_the_manual_is_not_repeated() {
    String lines =
        "bread-flour=80 %; whole-wheat-flour=20 %; water=66 %; salt=2 %; yeast-fresh=1.2 %";
    Result result = result(Doughs.input(Doughs.formula(lines), "mass=300 lb"));

    for (PercentLine line : result.lines()) {
      assertThat(line.grams() / GRAMS_PER_POUND).isNotCloseTo(0.6 * line.percent(), within(0.3));
    }
    assertThat(result.totalGrams() / GRAMS_PER_POUND).isCloseTo(300, within(1e-6));
  }

  /** A public table prints 15 000 g for 62 % of 25 kg. */
  @Test
  void the_misprint_of_the_table_is_not_repeated() {
    Result result = result(Doughs.input(Doughs.formula("bread-flour=25 kg; water=62 %"), null));

    assertThat(line(result, "water").grams()).isNotCloseTo(15_000, within(400.0));
  }

  @Test
  void a_preferment_joins_flour_and_water() {
    Map<String, Object> poolish =
        Doughs.formula("bread-flour=300 g; water=300 g; yeast-instant=0.3 g");
    Map<String, Object> bread =
        Doughs.with(
            Doughs.formula("bread-flour=700 g; water=380 g; salt=2 %"),
            poolish,
            "600.3 g",
            "preferment");

    Result result = result(Map.of("formula", bread));

    assertThat(result.flourGrams()).isCloseTo(1000, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(68, within(1e-9));
    assertThat(result.prefermentedFlourPercent()).isCloseTo(30, within(1e-9));
    assertThat(line(result, "bread-flour").percent()).isCloseTo(100, within(1e-9));
    assertThat(line(result, "salt").grams()).isCloseTo(20, within(1e-9));
    assertThat(line(result, "yeast-instant").percent()).isCloseTo(0.03, within(1e-9));
    assertThat(result.totalPercent()).isCloseTo(170.03, within(1e-9));
    PercentPart part = result.parts().get(0);
    assertThat(part.hydrationPercent()).isCloseTo(100, within(1e-9));
    assertThat(part.flourGrams()).isCloseTo(300, within(1e-9));
    assertThat(part.flourPercent()).isCloseTo(30, within(1e-9));
    assertThat(part.totalPercent()).isCloseTo(200.1, within(1e-9));
    assertThat(part.lines()).extracting(PercentLine::percent).hasSize(3).first().isEqualTo(100.0);
  }

  @Test
  void the_final_dough_shows_a_part_as_one_line() {
    Map<String, Object> poolish = Doughs.formula("bread-flour=100 %; water=100 %");
    poolish.put("id", "poolish");
    Map<String, Object> bread =
        Doughs.with(
            Doughs.formula("bread-flour=700 g; water=380 g"), poolish, "600 g", "preferment");

    Result result = result(Map.of("formula", bread));

    assertThat(result.finalDough())
        .extracting(PercentLine::grams)
        .containsExactly(700.0, 380.0, 600.0);
    assertThat(result.finalDough())
        .extracting(PercentLine::percent)
        .containsExactly(70.0, 38.0, 60.0);
    assertThat(result.finalDough().get(2).formula()).isEqualTo("poolish");
    assertThat(result.finalDough().get(2).ingredient()).isNull();
    assertThat(result.lines()).extracting(PercentLine::grams).containsExactly(1000.0, 680.0);
  }

  /** Of 666.7 g that are weighed 600 g go into the dough; baker's percent is of what is weighed. */
  @Test
  void a_preferment_that_loses_in_the_bowl_is_counted_as_it_is_weighed() {
    Map<String, Object> poolish = Doughs.formula("bread-flour=100 %; water=100 %");
    poolish.put("yield", Map.of("makeUpLoss", "10 %"));
    Map<String, Object> bread =
        Doughs.with(
            Doughs.formula("bread-flour=700 g; water=380 g"), poolish, "600 g", "preferment");

    Result result = result(Map.of("formula", bread));

    assertThat(result.flourGrams()).isCloseTo(1033.333, within(0.001));
    assertThat(result.totalGrams()).isCloseTo(1746.667, within(0.001));
    assertThat(result.totalPercent()).isCloseTo(169.032, within(0.001));
    assertThat(result.finalDough().get(2).grams()).isCloseTo(600, within(1e-9));
  }

  @Test
  void a_leaven_within_a_preferment_joins_too() {
    Map<String, Object> leaven = Doughs.formula("rye-flour=50 g; water=50 g");
    Map<String, Object> sour =
        Doughs.with(Doughs.formula("rye-flour=350 g; water=350 g"), leaven, "100 g", "preferment");
    Map<String, Object> bread =
        Doughs.with(Doughs.formula("bread-flour=600 g; water=300 g"), sour, "800 g", "preferment");

    Result result = result(Map.of("formula", bread));

    assertThat(result.flourGrams()).isCloseTo(1000, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(70, within(1e-9));
    assertThat(result.prefermentedFlourPercent()).isCloseTo(40, within(1e-9));
    assertThat(result.parts()).extracting(PercentPart::flourGrams).containsExactly(400.0, 50.0);
    assertThat(result.parts())
        .extracting(PercentPart::path)
        .containsExactly("/lines/2", "/lines/2/lines/2");
  }

  @Test
  void a_soaker_and_a_scald_bring_water_but_no_prefermented_flour() {
    Map<String, Object> soaker = Doughs.formula("flaxseed=60 g; water=120 g");
    Map<String, Object> scald = Doughs.formula("rye-flour=100 g; water=300 g");
    Map<String, Object> bread = Doughs.formula("bread-flour=900 g; water=300 g");
    Doughs.with(bread, soaker, "180 g", "soaker");
    Doughs.with(bread, scald, "400 g", "scald");

    Result result = result(Map.of("formula", bread));

    assertThat(result.flourGrams()).isCloseTo(1000, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(72, within(1e-9));
    assertThat(result.prefermentedFlourPercent()).isZero();
    PercentPart first = result.parts().get(0);
    assertThat(first.totalPercent()).as("a soaker has no flour of its own").isNull();
    assertThat(first.hydrationPercent()).isNull();
    assertThat(first.lines()).extracting(PercentLine::percent).containsOnlyNulls();
  }

  @Test
  void a_part_of_its_own_is_a_line_and_does_not_join() {
    Map<String, Object> topping = Doughs.formula("bread-flour=100 g; water=100 g");
    topping.put("id", "topping");
    Map<String, Object> bun =
        Doughs.with(Doughs.formula("bread-flour=500 g; water=300 g"), topping, "50 g", "part");

    Result result = result(Map.of("formula", bun));

    assertThat(result.flourGrams()).isCloseTo(500, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(60, within(1e-9));
    assertThat(result.parts()).isEmpty();
    PercentLine line = result.lines().get(2);
    assertThat(line.formula()).isEqualTo("topping");
    assertThat(line.percent()).isCloseTo(10, within(1e-9));
    assertThat(remarks(Map.of("formula", bun))).contains("part-apart");
  }

  @Test
  void water_that_boils_off_is_weighed_but_does_not_hydrate() {
    Map<String, Object> formula = Doughs.formula("bread-flour=500 g; water=400 g");
    Doughs.lines(formula).get(1).put("remains", 0.75);

    Result result = result(Map.of("formula", formula));

    assertThat(line(result, "water").percent()).isCloseTo(80, within(1e-9));
    assertThat(result.hydrationPercent()).isCloseTo(60, within(1e-9));
    assertThat(remarks(Map.of("formula", formula))).contains("water-not-remaining");
  }

  @Test
  void flour_for_dusting_is_outside_of_percent_and_said_so() {
    Map<String, Object> formula =
        Doughs.formula("bread-flour=500 g; water=300 g; rice-flour=as needed");

    Result result = result(Map.of("formula", formula));

    assertThat(result.flourGrams()).isCloseTo(500, within(1e-9));
    assertThat(result.lines()).hasSize(2);
    assertThat(remarks(Map.of("formula", formula))).contains("as-needed");
  }

  @Test
  void water_that_the_composition_does_not_tell_is_said_and_makes_the_figure_incomplete() {
    Map<String, Object> input =
        Map.of("formula", Doughs.formula("bread-flour=500 g; water=300 g; food-colour=5 g"));

    assertThat(result(input).incomplete()).containsExactly("/totalWaterPercent");
    assertThat(remarks(input)).contains("unknown-water");
    assertThat(
            result(Map.of("formula", Doughs.formula("bread-flour=500 g; water=300 g")))
                .incomplete())
        .isEmpty();
  }

  @Test
  void a_formula_names_what_else_counts_as_flour() {
    Map<String, Object> formula =
        Doughs.formula("bread-flour=400 g; wheat-starch=100 g; water=300 g");

    assertThat(result(Map.of("formula", formula)).hydrationPercent()).isCloseTo(75, within(1e-9));
    formula.put("flour", List.of("wheat-starch"));
    assertThat(result(Map.of("formula", formula)).hydrationPercent()).isCloseTo(60, within(1e-9));
  }

  @Test
  void a_formula_wholly_in_percent_needs_no_size() {
    Map<String, Object> formula = Doughs.formula("bread-flour=100 %; water=64 %; salt=2 %");

    Result free = result(Map.of("formula", formula));
    Result sized = result(Doughs.input(formula, "mass=12 kg"));

    assertThat(free.flourGrams()).isCloseTo(1000, within(1e-9));
    assertThat(free.hydrationPercent()).isCloseTo(sized.hydrationPercent(), within(1e-9));
    assertThat(free.totalPercent()).isCloseTo(166, within(1e-9));
    assertThat(remarks(Map.of("formula", formula))).contains("size-assumed");
    assertThat(remarks(Doughs.input(formula, "mass=12 kg"))).doesNotContain("size-assumed");
  }

  @Test
  void percentages_of_cups_are_an_estimate_and_point_to_their_densities() {
    Map<String, Object> input =
        Map.of("formula", Doughs.formula("all-purpose-flour=4 cup; water=300 g"));

    assertThat(remarks(input)).contains("measured-by-volume");
    assertThat(answer(read(input)).sources())
        .filteredOn(source -> source.table().equals("densities"))
        .singleElement()
        .satisfies(source -> assertThat(source.pointers()).containsExactly("/lines/0/grams"));
  }

  @Test
  void a_formula_without_flour_is_refused() {
    Refusal refusal =
        refused(Map.of("formula", Doughs.formula("sugar-granulated=200 g; water=100 g")));

    assertThat(refusal.faults())
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).isEqualTo(FaultCode.NO_FLOUR);
              assertThat(fault.pointer()).isEqualTo("/formula");
              assertThat(fault.message()).contains("no flour");
            });
  }

  @Test
  void flours_in_percent_that_are_not_a_hundred_are_refused() {
    Refusal refusal = refused(Map.of("formula", Doughs.formula("bread-flour=90 %; water=60 %")));

    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.NO_FLOUR);
    assertThat(refusal.faults().get(0).message()).contains("100 %").contains("90 %");
  }

  @Test
  void a_size_that_cannot_be_is_refused_where_it_was_said() {
    Refusal refusal =
        refused(Doughs.input(Doughs.formula("bread-flour=100 %; water=60 %"), "factor=2"));

    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.NO_SIZE);
    assertThat(refusal.faults().get(0).pointer()).startsWith("/to");
  }

  @Test
  void percentages_do_not_depend_on_the_size_of_the_batch() {
    Random random = new Random(20260503);
    for (int i = 0; i < 50; i++) {
      Map<String, Object> formula = Doughs.random(random);
      Map<String, Double> asWritten = percents(result(Map.of("formula", formula)));
      double factor = Math.exp(6 * random.nextDouble() - 3);
      Map<String, Double> scaled = percents(result(Doughs.input(formula, "factor=" + factor)));
      assertSame(asWritten, scaled);
    }
  }

  @Test
  void percentages_do_not_depend_on_the_order_of_the_lines() {
    Random random = new Random(20260504);
    for (int i = 0; i < 50; i++) {
      Map<String, Object> formula = Doughs.random(random);
      Map<String, Object> shuffled = new LinkedHashMap<>(formula);
      List<Map<String, Object>> lines = new ArrayList<>(Doughs.lines(formula));
      Collections.shuffle(lines, random);
      shuffled.put("lines", lines);
      assertSame(
          percents(result(Map.of("formula", formula))),
          percents(result(Map.of("formula", shuffled))));
    }
  }

  @Test
  void all_flours_together_are_a_hundred_percent() {
    Random random = new Random(20260505);
    for (int i = 0; i < 50; i++) {
      Result result = result(Map.of("formula", Doughs.random(random)));
      double flour = 0;
      double total = 0;
      for (PercentLine line : result.lines()) {
        flour += Boolean.TRUE.equals(line.flour()) ? line.percent() : 0;
        total += line.percent();
      }
      assertThat(flour).isCloseTo(100, within(1e-9));
      assertThat(result.totalPercent()).isCloseTo(total, within(1e-9)).isGreaterThan(100);
    }
  }

  private static Map<String, Double> percents(Result result) {
    Map<String, Double> percents = new HashMap<>();
    result.lines().forEach(line -> percents.put(line.ingredient(), line.percent()));
    percents.put("hydration", result.hydrationPercent());
    percents.put("total water", result.totalWaterPercent());
    percents.put("prefermented", result.prefermentedFlourPercent());
    percents.put("total", result.totalPercent());
    return percents;
  }

  private static void assertSame(Map<String, Double> expected, Map<String, Double> actual) {
    assertThat(actual.keySet()).isEqualTo(expected.keySet());
    expected.forEach(
        (name, value) -> assertThat(actual.get(name)).as(name).isCloseTo(value, within(1e-8)));
  }

  private List<String> remarks(Map<String, ?> input) {
    return answer(read(input)).remarks().stream().map(Remark::code).toList();
  }

  private Refusal refused(Map<String, ?> input) {
    return catchThrowableOfType(Refusal.class, () -> result(input));
  }
}
