package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.note.Remark;
import tamis.engine.pan.Pans;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Row;

class PanConversionTest extends CalculationContract<PanConversion.Input, PanConversion.Result> {
  private static final List<String> IDS =
      Pans.standard().table().rows().stream().map(Row::key).toList();
  private static final Percentage ROUNDING = Percentage.withPercentage(1e-9);

  @Override
  protected PanConversion calculation() {
    return new PanConversion();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @ParameterizedTest(name = "{0} into {1}: × {2} ({4})")
  @CsvFileSource(resources = "/pan-conversion.csv", numLinesToSkip = 1)
  void factors_match_the_worked_examples(
      String from, String into, double factor, double tolerance, String source) {
    PanConversion.Result result =
        convert(
            List.of(Given.count(Given.pan("round", from), 1)),
            List.of(Given.count(Given.pan("round", into), 1)));
    assertThat(result.factor()).isEqualTo(factor, within(tolerance));
  }

  @Test
  void an_8_in_square_has_the_area_of_a_9_in_round() {
    PanConversion.Result result =
        convert(
            List.of(Given.count(Given.pan("round", "diameter=9 in;height=2 in"), 1)),
            List.of(Given.count(Given.pan("square", "side=8 in;height=2 in"), 1)));
    assertThat(result.areaFactor()).isEqualTo(1.00602, within(1e-5));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("tamis.plugin.pans.Given#seeds")
  void there_and_back_is_one_and_the_volumes_balance(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Object> a = drawn(random);
    List<Object> b = drawn(random);
    PanConversion.Result there = convert(a, b);
    PanConversion.Result back = convert(b, a);
    assertThat(there.factor() * back.factor()).isCloseTo(1, ROUNDING);
    assertThat(there.factor() * there.fromMillilitres())
        .isCloseTo(there.intoMillilitres(), ROUNDING);
    assertThat(there.factor()).isBetween(there.low(), there.high());
    assertThat(batter(there.from()) * there.factor()).isCloseTo(batter(there.into()), ROUNDING);
  }

  private static double batter(List<PanShare> pans) {
    return pans.stream().mapToDouble(pan -> pan.batterMillilitres() * pan.count()).sum();
  }

  private static List<Object> drawn(SplittableRandom random) {
    List<Object> pans = new ArrayList<>();
    for (int i = random.nextInt(1, 4); i > 0; i--) {
      pans.add(Given.count(IDS.get(random.nextInt(IDS.size())), random.nextInt(1, 9)));
    }
    return pans;
  }

  @Test
  void the_same_pan_twice_takes_twice_and_stands_as_high() {
    PanConversion.Result result =
        convert(List.of(Given.count("round-20x5-cm", 1)), List.of(Given.count("round-20x5-cm", 2)));
    assertThat(result.factor()).isEqualTo(2, within(1e-12));
    assertThat(result.into().get(0).depthChangeCm()).isEqualTo(0, within(1e-12));
    assertThat(result.into().get(0).keepsDepth()).isTrue();
  }

  @Test
  void how_full_counts_where_it_is_told_for_all() {
    Map<String, Object> half = Map.of("pan", "round-20x5-cm", "fill", 0.5);
    Map<String, Object> full = Map.of("pan", "round-20x5-cm", "fill", 0.75);
    assertThat(convert(List.of(half), List.of(full)).factor()).isEqualTo(1.5, within(1e-12));
    Map<String, Object> untold = Map.of("pan", "round-20x5-cm");
    assertThat(Given.told(() -> convert(List.of(half), List.of(untold))))
        .containsExactly("inconsistent /into");
  }

  @Test
  void a_pan_outside_the_rule_of_depth_gets_advice_as_remarks_only() {
    Map<String, Object> input =
        Map.of(
            "from",
            List.of(Given.count("round-20x5-cm", 1)),
            "into",
            List.of(Given.count("round-20x7_5-cm", 1), Given.count("round-20x2-cm", 1)),
            "batter",
            "butter-cake");
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .containsExactly(
            "depth-outside-rule", "batter-deeper", "depth-outside-rule", "batter-shallower");
    PanConversion.Result result = result(input);
    assertThat(result.into()).extracting(PanShare::keepsDepth).containsExactly(false, false);
    assertThat(result.into().get(0).depthChangeCm()).isEqualTo(1.5, within(1e-9));
    assertThat(result.into().get(1).depthChangeCm()).isEqualTo(-1.8, within(1e-9));
  }

  @Test
  void a_formula_brings_its_own_pans_and_its_mass_is_shared_out() {
    PanConversion.Result result =
        result(
            Map.of(
                "formula",
                Given.sponge(Map.of("pans", List.of(Given.count("round-20x5-cm", 2)))),
                "into",
                List.of(Given.count("round-20x5-cm", 3))));
    assertThat(result.factor()).isEqualTo(1.5, within(1e-12));
    assertThat(result.grams()).isEqualTo(900, within(1e-9));
    assertThat(result.into().get(0).grams()).isEqualTo(300, within(1e-9));
  }

  @Test
  void a_formula_that_names_no_pans_is_refused() {
    Map<String, Object> input =
        Map.of(
            "formula",
            Given.sponge(Map.of("portions", 12)),
            "into",
            List.of(Given.count("round-20x5-cm", 1)));
    assertThat(Given.told(() -> result(input))).containsExactly("no-size /formula");
  }

  @Test
  void masses_no_pans_and_no_pans_to_fill_are_refused() {
    Map<String, Object> pan = Map.of("pan", "round-20x5-cm", "mass", "500 g");
    assertThat(Given.told(() -> convert(List.of(pan), List.of(pan))))
        .containsExactly("not-allowed /from/0/mass", "not-allowed /into/0/mass");
    Map<String, Object> plain = Map.of("pan", "round-20x5-cm");
    assertThat(Given.told(() -> read(Map.of("into", List.of(plain)))))
        .anyMatch(told -> told.startsWith("exactly-one"));
    assertThat(Given.told(() -> convert(List.of(plain), List.of()))).contains("missing /into");
  }

  private PanConversion.Result convert(List<?> from, List<?> into) {
    return result(Map.of("from", from, "into", into));
  }
}
