package tamis.plugin.scaling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.scaling.Scaled.formula;
import static tamis.plugin.scaling.Scaled.map;
import static tamis.plugin.scaling.Scaled.scaled;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** What a line shows: steps of a scale, deviations, counts, words. */
class ScaledLinesTest {
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
}
