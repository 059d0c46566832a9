package tamis.plugin.scaling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.spi.Trees;

class ScalingTest extends CalculationContract<Scaling.Input, Scaling.Result> {
  private static final Map<String, Object> CREAM =
      formula("cream", "milk-whole 3 g; egg-yolk 6 each; sugar-granulated 100 g; salt 0.04 g");

  @Override
  protected Calculation<Scaling.Input, Scaling.Result> calculation() {
    return new Scaling();
  }

  @Override
  protected Plugin plugin() {
    return new ScalingPlugin();
  }

  /** With a cream on the shelf, beside what every kitchen has. */
  @Override
  protected Kitchen kitchen() {
    RecordReader reader = new RecordReader(References.UNCHECKED, Limits.usual());
    Formula cream = reader.read(Formula.class, CREAM);
    return new Pantry(Shelf.of(List.of(cream), List.of()), Pantry.Fittings.of(List.of(plugin())));
  }

  private static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  /** {@code bread-flour 1000 g; water 65 %} as a document that gives ten portions. */
  private static Map<String, Object> formula(String id, String lines) {
    List<Object> read = new ArrayList<>();
    for (String line : lines.split("; ")) {
      String[] both = line.split(" ", 2);
      boolean part = both[0].startsWith(">");
      read.add(
          map(
              part ? "formula" : "ingredient",
              part ? both[0].substring(1) : both[0],
              "quantity",
              both[1]));
    }
    return map("id", id, "lines", read, "measures", "us", "yield", map("portions", 10.0));
  }

  private Answer<Scaling.Result> scaled(Object formula, Object... more) {
    Map<String, Object> input = map("formula", formula);
    input.putAll(map(more));
    return answer(read(input));
  }

  private Answer<Scaling.Result> scaled(String lines) {
    return scaled(formula("cake", lines));
  }

  @ParameterizedTest(name = "{2} of {0} ({1}) is {3} ({4})")
  @CsvFileSource(resources = "/scaling.csv", delimiter = '|', numLinesToSkip = 1)
  void figures_worked_by_hand(String lines, String to, String ask, double expected, String source) {
    Map<String, Object> size = new LinkedHashMap<>();
    for (String pair : to.split(", ")) {
      String[] both = pair.split("=");
      size.put(both[0], both[1].matches("[0-9.]+") ? Double.valueOf(both[1]) : both[1]);
    }
    Scaling.Result result = scaled(formula("cake", lines), "to", size).result();
    Object figure = Trees.leaves(Trees.of(result)).get(ask);
    assertThat((Double) figure).as(source).isEqualTo(expected, within(1e-6));
  }

  @ParameterizedTest(name = "{1} of {0} at {2} are {3} g ({5})")
  @CsvFileSource(resources = "/altitude.csv", delimiter = '|', numLinesToSkip = 1)
  void cakes_at_altitude(
      String ingredient,
      String quantity,
      String altitude,
      double grams,
      double tolerance,
      String source) {
    Map<String, Object> cake = formula("cake", ingredient + " " + quantity);
    ScaledLine line = scaled(cake, "altitude", altitude).result().lines().get(0);
    assertThat(line.grams()).as(source).isEqualTo(grams, within(tolerance));
  }

  @Test
  void what_changes_at_altitude_changes_all_that_is_told_of_the_batch() {
    Map<String, Object> cake = formula("cake", "egg-yolk 6 each; butter-unsalted 100 g; salt 2 g");
    Answer<Scaling.Result> answer = scaled(cake, "altitude", "5000 ft");
    Scaling.Result result = answer.result();
    double yolks = 6 * 17 * 1.09;
    assertThat(result.lines().get(0).altitudePercent()).isEqualTo(9, within(1e-9));
    assertThat(result.lines().get(1).altitudePercent()).isZero();
    assertThat(result.lines().get(2).altitudePercent()).isNull();
    assertThat(result.bill().get("egg-yolk").grams()).isEqualTo(yolks, within(1e-9));
    assertThat(result.grams()).isEqualTo(yolks + 102, within(1e-9));
    assertThat(result.parts().grams()).isEqualTo(result.grams());
    assertThat(result.byProducts().get(0).grams()).isEqualTo(6 * 33 * 1.09, within(1e-9));
    assertThat(result.wholeEggs().get(0).count()).isEqualTo(6.54, within(1e-9));
    assertThat(answer.remarks())
        .extracting(Remark::code, Remark::kind)
        .contains(tuple("altitude-table", Remark.Kind.ESTIMATE));
    assertThat(answer.sources())
        .filteredOn(source -> source.table().equals("altitude-cake"))
        .extracting(Cited::row, Cited::pointers)
        .containsExactly(
            tuple("egg/5000", List.of("/lines/0/grams")),
            tuple("fat/5000", List.of("/lines/1/grams")));
  }

  @Test
  void between_two_heights_both_rows_are_named() {
    Map<String, Object> cake = formula("cake", "egg 100 g; cake-flour 100 g");
    assertThat(scaled(cake, "altitude", "6000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/5000", "egg/7500", "flour/5000", "flour/7500");
    assertThat(scaled(cake, "altitude", "1000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/2500", "flour/2500");
    assertThat(scaled(cake, "altitude", "9000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/7500", "flour/7500");
  }

  @Test
  void above_the_table_its_last_row_is_used_and_a_remark_says_so() {
    Answer<Scaling.Result> high = scaled(formula("cake", "egg 100 g"), "altitude", "3000 m");
    assertThat(high.remarks())
        .anyMatch(r -> r.code().equals("beyond-table") && r.message().contains("7500 ft (2286 m)"));
    Answer<Scaling.Result> edge = scaled(formula("cake", "egg 100 g"), "altitude", "7500 ft");
    assertThat(edge.remarks()).noneMatch(r -> r.code().equals("beyond-table"));
    Answer<Scaling.Result> sea = scaled(formula("cake", "egg 100 g"), "altitude", "0 m");
    assertThat(sea.remarks()).isEmpty();
  }

  @ParameterizedTest(name = "{0} is weighed as {1} g, {2} % off, and shown as {3}")
  @CsvSource({
    "0.04 g, 0.0, -100, 0 g, true",
    "2.44 g, 2.4, -1.639344, 2.4 g, false",
    "2.45 g, 2.5, 2.040816, 2.5 g, true",
    "9.96 g, 10.0, 0.401606, 10 g, false",
    "10.4 g, 10.0, -3.846154, 10 g, true",
    "340.5 g, 341.0, 0.146843, 341 g, false",
    "999.6 g, 1000.0, 0.040016, 1 kg, false",
    "1252 g, 1250.0, -0.159744, 1.25 kg, false",
    "1252.5 g, 1255.0, 0.199601, 1.255 kg, false",
    "12344 g, 12340.0, -0.032404, 12.34 kg, false",
  })
  void lines_are_rounded_to_the_step_of_a_scale(
      String quantity, double rounded, double percent, String display, boolean remarked) {
    Answer<Scaling.Result> answer = scaled("sugar-granulated " + quantity + "; water 1 kg");
    ScaledLine line = answer.result().lines().get(0);
    assertThat(line.roundedGrams()).isEqualTo(rounded);
    assertThat(line.deviationPercent()).isEqualTo(percent, within(1e-6));
    assertThat(line.display()).isEqualTo(display);
    assertThat(answer.remarks().stream().anyMatch(r -> r.code().equals("rounding-deviation")))
        .isEqualTo(remarked);
  }

  @ParameterizedTest(name = "{0} {1}: {2}")
  @CsvSource({
    "salt, 10.4 g, false",
    "yeast-instant, 10.4 g, false",
    "baking-powder, 1.06 g, false",
    "salt, 0.94 g, false",
    "salt, 0.85 g, true",
    "gelatine-powder, 0.85 g, true",
    "cocoa-powder, 10.4 g, true",
  })
  void salt_and_leavening_may_deviate_by_five_percent_and_the_rest_by_two(
      String ingredient, String quantity, boolean remarked) {
    Answer<Scaling.Result> answer = scaled(ingredient + " " + quantity + "; water 1 kg");
    assertThat(answer.remarks().stream().anyMatch(r -> r.message().contains(ingredient)))
        .isEqualTo(remarked);
  }

  @Test
  void a_step_of_ones_own_holds_for_all_lines() {
    Map<String, Object> cake = formula("cake", "sugar-granulated 12.6 g; water 1231 g");
    Scaling.Result result = scaled(cake, "rounding", map("step", "25 g")).result();
    assertThat(result.lines()).extracting(ScaledLine::roundedGrams).containsExactly(25.0, 1225.0);
    assertThat(result.bill().get("water").roundedGrams()).isEqualTo(1225);
  }

  @Test
  void a_deviation_is_told_where_the_line_stands_in_the_input() {
    Map<String, Object> inner = formula("inner", "sugar-granulated 10.4 g");
    Map<String, Object> cake = formula("cake", "egg 10.4 g; >cream 209.04 g");
    List<Object> lines = new ArrayList<>((List<?>) cake.get("lines"));
    lines.add(map("formula", inner, "quantity", "10.4 g"));
    cake.put("lines", lines);
    assertThat(scaled(cake).remarks())
        .filteredOn(remark -> remark.code().equals("rounding-deviation"))
        .extracting(Remark::pointer)
        .containsOnly(
            "/formula/lines/0", "/formula/lines/1/formula", "/formula/lines/2/formula/lines/0");
    assertThat(scaled("cream", "to", map("factor", 0.3)).remarks())
        .filteredOn(remark -> remark.code().equals("rounding-deviation"))
        .extracting(Remark::pointer)
        .containsOnly("/formula");
  }

  @Test
  void the_bill_is_the_sum_of_the_lines() {
    Scaling.Result result =
        scaled("egg-yolk 2 each; >cream 300 g; sugar-granulated 1 cup; salt as needed").result();
    assertThat(result.bill())
        .containsOnlyKeys("egg-yolk", "milk-whole", "sugar-granulated", "salt");
    result
        .bill()
        .forEach(
            (id, entry) -> {
              List<ScaledLine> lines =
                  result.lines().stream().filter(line -> line.ingredient().equals(id)).toList();
              assertThat(entry.grams())
                  .as(id)
                  .isEqualTo(lines.stream().mapToDouble(ScaledLine::grams).sum(), within(1e-9));
              assertThat(entry.low())
                  .isEqualTo(lines.stream().mapToDouble(ScaledLine::low).sum(), within(1e-9));
              assertThat(entry.high())
                  .isEqualTo(lines.stream().mapToDouble(ScaledLine::high).sum(), within(1e-9));
            });
    assertThat(result.weighedGrams())
        .isEqualTo(result.lines().stream().mapToDouble(ScaledLine::grams).sum(), within(1e-9));
  }

  @ParameterizedTest(name = "{0} of {1} times {2} is counted {3}")
  @CsvSource({
    "milk-whole, 1 l, 0.37, 370 ml",
    "milk-whole, 1 l, 0.473, 473 ml",
    "milk-whole, 1 l, 1.13, 1.13 l",
    "milk-whole, 200 ml, 0.5817, 116 ml",
    "milk-whole, 1 cup, 0.37, 0.37 cup",
    "milk-whole, 1 cup, 1.13, 1.13 cup",
    "milk-whole, 3 cup, 0.76, 2.25 cup",
    "salt, 1 tsp, 0.08, 0.08 tsp",
    "salt, 1 tsp, 0.001, 0.001 tsp",
    "sugar-granulated, 3 tbsp, 1.13, 3.5 tbsp",
    "egg, 4 each, 0.5817, 2.25 each",
    "egg, 4 each, 3.3333333, 13.25 each"
  })
  void what_is_counted_is_never_far_from_what_is_weighed(
      String ingredient, String quantity, double factor, String counted) {
    Map<String, Object> one = formula("one", ingredient + " " + quantity);
    List<ScaledLine> lines = scaled(one, "to", map("factor", factor)).result().lines();
    assertThat(lines).extracting(ScaledLine::counted).containsExactly(counted);
  }

  @Test
  void what_a_scale_shows_exactly_deviates_by_nothing() {
    Map<String, Object> milk = formula("milk", "milk-whole 206.2655 g; salt 3.1 g");
    Map<String, Object> stock = map("ingredient", "milk-whole", "quantity", "120 g");
    List<ScaledLine> lines = scaled(milk, "to", map("stock", List.of(stock))).result().lines();
    assertThat(lines.get(0).roundedGrams()).isEqualTo(120);
    assertThat(lines.get(0).deviationPercent()).isZero();
  }

  @Test
  void lines_tell_what_they_are_for() {
    Map<String, Object> cake = formula("cake", "butter-unsalted 2 stick; salt as needed");
    List<Object> lines = new ArrayList<>((List<?>) cake.get("lines"));
    lines.add(
        map(
            "ingredient",
            "water",
            "quantity",
            "3/4 cup",
            "remains",
            0.4,
            "stage",
            "boil",
            "state",
            "as-measured"));
    cake.put("lines", lines);
    cake.put("stages", List.of(map("id", "boil")));
    List<ScaledLine> result = scaled(cake, "to", map("factor", 3.0)).result().lines();
    assertThat(result).extracting(ScaledLine::counted).containsExactly("6 stick", null, "2.25 cup");
    assertThat(result).extracting(ScaledLine::asNeeded).containsExactly(null, true, null);
    assertThat(result).extracting(ScaledLine::remains).containsExactly(null, null, 0.4);
    assertThat(result).extracting(ScaledLine::stage).containsExactly(null, null, "boil");
    assertThat(result).extracting(ScaledLine::path).contains("/lines/2");
    assertThat(result.get(0).name()).isEqualTo("Butter, unsalted");
    assertThat(result.get(1).display()).isEqualTo("as needed");
  }

  @Test
  void nothing_of_an_ingredient_is_not_the_same_as_some_as_needed() {
    Scaling.Result result = scaled("sugar-granulated 0 g; salt as needed; water 1 kg").result();
    assertThat(result.lines()).extracting(ScaledLine::display).startsWith("0 g", "as needed");
    assertThat(result.bill().get("sugar-granulated").display()).isEqualTo("0 g");
    assertThat(result.bill().get("salt").display()).isEqualTo("as needed");
  }

  @Test
  void figures_are_shown_in_the_measures_that_are_wanted() {
    Map<String, Object> cake = formula("cake", "water 1 lb; salt 0 g");
    Scaling.Result us = scaled(cake, "units", "us").result();
    assertThat(us.lines()).extracting(ScaledLine::display).containsExactly("1 lb", "0 g");
    assertThat(us.bill().get("water").display()).isEqualTo("1 lb");
    Scaling.Result metric = scaled(cake, "units", "metric").result();
    assertThat(metric.lines().get(0).display()).isEqualTo("454 g");
  }

  @Test
  void losses_show_in_each_mass() {
    Map<String, Object> loaf = formula("loaf", "bread-flour 1000 g");
    loaf.put("yield", map("makeUpLoss", "2 %", "bakeLoss", "11 %"));
    Scaling.Result result = scaled(loaf).result();
    assertThat(result.grams()).isEqualTo(1000);
    assertThat(result.madeUpGrams()).isEqualTo(980, within(1e-9));
    assertThat(result.yieldGrams()).isEqualTo(872.2, within(1e-9));
    assertThat(result.portions()).isNull();
  }

  // whole eggs ------------------------------------------------------------------------------

  @Test
  void factors_for_whole_eggs_are_told() {
    Scaling.Result result =
        scaled(formula("cake", "egg 3 each; water 1 g"), "to", map("factor", 1.5)).result();
    assertThat(result.wholeEggs()).hasSize(1);
    WholeEggs eggs = result.wholeEggs().get(0);
    assertThat(eggs.ingredient()).isEqualTo("egg");
    assertThat(eggs.count()).isEqualTo(4.5, within(1e-9));
    assertThat(List.of(eggs.down(), eggs.up())).containsExactly(4.0, 5.0);
    assertThat(eggs.downFactor()).isEqualTo(4 / 3.0, within(1e-9));
    assertThat(eggs.upFactor()).isEqualTo(5 / 3.0, within(1e-9));
    WholeEggs few = scaled(formula("cake", "egg 20 g; water 1 g")).result().wholeEggs().get(0);
    assertThat(few.downFactor()).isNull();
    assertThat(few.up()).isEqualTo(1);
    WholeEggs whole = scaled("egg 3 each; water 1 g").result().wholeEggs().get(0);
    assertThat(List.of(whole.down(), whole.up())).containsExactly(3.0, 3.0);
  }

  @ParameterizedTest(name = "at {0} times {1} eggs are used")
  @CsvSource({"1.4, 4", "1.5, 5", "1.6, 5", "0.1, 1", "1, 3"})
  void the_batch_is_made_for_whole_eggs_if_wanted(double factor, double eggs) {
    Answer<Scaling.Result> answer =
        scaled(
            formula("cake", "egg 3 each; water 30 g"),
            "to",
            map("factor", factor),
            "rounding",
            map("wholeEggs", true));
    assertThat(answer.result().wholeEggs().get(0).count()).isEqualTo(eggs, within(1e-9));
    assertThat(answer.result().factor()).isEqualTo(eggs / 3, within(1e-9));
    assertThat(answer.result().bill().get("water").grams()).isEqualTo(10 * eggs, within(1e-9));
    assertThat(answer.result().portions()).isEqualTo(10 * eggs / 3, within(1e-9));
    assertThat(answer.remarks().stream().anyMatch(r -> r.code().equals("whole-eggs")))
        .isEqualTo(factor != 1);
  }

  @Test
  void what_is_on_hand_is_never_overdrawn_for_a_whole_egg() {
    Map<String, Object> cake = formula("cake", "egg 3 each; water 30 g");
    Object stock = map("stock", List.of(map("ingredient", "water", "quantity", "49 g")));
    Scaling.Result result = scaled(cake, "to", stock, "rounding", map("wholeEggs", true)).result();
    assertThat(result.wholeEggs().get(0).count()).as("4.9 as asked").isEqualTo(4, within(1e-9));
    assertThat(result.limitedBy()).isEqualTo("water");
    Object little = map("stock", List.of(map("ingredient", "water", "quantity", "4 g")));
    Answer<Scaling.Result> few = scaled(cake, "to", little, "rounding", map("wholeEggs", true));
    assertThat(few.result().factor()).isEqualTo(4 / 30.0, within(1e-9));
    assertThat(few.remarks()).anyMatch(r -> r.message().contains("one whole egg"));
  }

  @Test
  void of_several_kinds_of_egg_the_first_is_made_whole() {
    Map<String, Object> cake = formula("cake", "egg 3 each; egg-yolk 2 each");
    Answer<Scaling.Result> answer =
        scaled(cake, "to", map("factor", 1.1), "rounding", map("wholeEggs", true));
    assertThat(answer.result().factor()).as("3.3 eggs as asked").isEqualTo(1, within(1e-9));
    assertThat(answer.result().wholeEggs())
        .extracting(WholeEggs::ingredient)
        .containsExactly("egg", "egg-yolk");
    assertThat(answer.remarks()).anyMatch(r -> r.message().contains("only `egg`"));
  }

  @Test
  void a_formula_without_eggs_stays_as_it_is() {
    Map<String, Object> cake = formula("cake", "water 30 g");
    Answer<Scaling.Result> answer =
        scaled(cake, "to", map("factor", 1.1), "rounding", map("wholeEggs", true));
    assertThat(answer.result().factor()).isEqualTo(1.1);
    assertThat(answer.remarks()).isEmpty();
  }

  // stock and refusals ----------------------------------------------------------------------

  @Test
  void what_limits_the_batch_is_named() {
    Map<String, Object> cake = formula("cake", "egg 3 each; >cream 100 g");
    Object stock =
        List.of(
            map("ingredient", "egg", "quantity", "4 each"),
            map("formula", "cream", "quantity", "120 g"));
    Scaling.Result result = scaled(cake, "to", map("stock", stock)).result();
    assertThat(result.limitedBy()).isEqualTo("cream");
    assertThat(result.factor()).isEqualTo(1.2, within(1e-9));
  }

  @Test
  void the_parts_are_told_as_a_tree() {
    ScaledPart root = scaled("water 1 g; >cream 209.04 g; >cream 100 g").result().parts();
    assertThat(root.path()).isEmpty();
    assertThat(root.parts())
        .extracting(ScaledPart::path, ScaledPart::formula, ScaledPart::title)
        .containsExactly(tuple("/lines/1", "cream", "cream"), tuple("/lines/2", "cream", "cream"));
    assertThat(root.weighedGrams()).isEqualTo(310.04, within(1e-9));
  }

  @ParameterizedTest(name = "{0} = {1} is refused at {2}")
  @CsvSource({
    "altitude, 7000 m, /altitude",
    "altitude, 1500, /altitude",
    "units, imperial, /units",
    "formula, crem, /formula",
    "to, 3 kg, /to",
    "rounding, 5 g, /rounding",
    "scale, 3, /scale",
  })
  void what_cannot_be_meant_is_refused_with_its_place(String name, String value, String pointer) {
    Map<String, Object> input = map("formula", "cream");
    input.put(name, value);
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults()).extracting(Fault::pointer).containsExactly(pointer);
  }

  @Test
  void a_size_of_nothing_is_refused() {
    for (Map<String, Object> to :
        List.of(
            map("factor", 0.0),
            map("factor", -1.0),
            map("mass", "0 g"),
            map("portions", 0.0),
            map("pieces", 3.0, "pieceMass", "0 g"),
            map("line", map("ingredient", "egg-yolk", "quantity", "0 each")))) {
      Map<String, Object> input = map("formula", "cream", "to", to);
      Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
      assertThat(refusal).as("%s", to).isNotNull();
      assertThat(refusal.faults().get(0).pointer()).startsWith("/to/");
    }
    Map<String, Object> input =
        map("formula", "cream", "rounding", map("step", "0 g"), "altitude", "9 km");
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> result(input));
    assertThat(refusal.faults())
        .extracting(Fault::pointer)
        .containsExactly("/rounding/step", "/altitude");
  }
}
