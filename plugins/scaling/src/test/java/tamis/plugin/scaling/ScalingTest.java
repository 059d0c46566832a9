package tamis.plugin.scaling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.scaling.Scaled.formula;
import static tamis.plugin.scaling.Scaled.map;
import static tamis.plugin.scaling.Scaled.scaled;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.spi.Trees;

class ScalingTest extends CalculationContract<Scaling.Input, Scaling.Result> {
  @Override
  protected Calculation<Scaling.Input, Scaling.Result> calculation() {
    return new Scaling();
  }

  /** With a cream on the shelf, beside what every kitchen has. */
  @Override
  protected Kitchen kitchen() {
    return Scaled.kitchen();
  }

  @Override
  protected Plugin plugin() {
    return new ScalingPlugin();
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
