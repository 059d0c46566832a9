package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class SlicesTest extends CalculationContract<Slices.Input, Slices.Result> {
  @Override
  protected Slices calculation() {
    return new Slices();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @ParameterizedTest(name = "a {0} of {2} gives {4}, the chart says {5} to {6}")
  @CsvSource({
    "square, side, 7 in, 24.5, 24, 24.5, 24.5",
    "round, diameter, 7 in, 19.242, 19, 19.24, 19.24",
    "round, diameter, 8 in, 25.133, 25, 24, 25",
  })
  void portions_stand_beside_what_a_printed_chart_says(
      String shape,
      String name,
      String size,
      double byArea,
      int portions,
      double low,
      double high) {
    Slices.Result result = result(Map.of("cake", Map.of("shape", shape, name, size)));
    assertThat(result.byArea()).isEqualTo(byArea, within(1e-3));
    assertThat(result.portions()).isEqualTo(portions);
    assertThat(result.tiers().get(0).chartLow()).isEqualTo(low);
    assertThat(result.tiers().get(0).chartHigh()).isEqualTo(high);
  }

  @Test
  void a_tray_is_cut_in_rows() {
    Slices.Result result =
        result(
            Map.of(
                "cake",
                Map.of("shape", "rectangle", "length", "60 cm", "width", "40 cm"),
                "slice",
                Map.of("length", "7 cm", "width", "5 cm")));
    assertThat(result.portions()).isEqualTo(68);
    assertThat(result.tiers().get(0).byRows()).isEqualTo(64);
    assertThat(result.tiers().get(0).chartLow()).isNull();
  }

  @Test
  void tiers_add_up_and_the_highest_may_be_kept() {
    Map<String, Object> input = new HashMap<>();
    input.put("tiers", List.of(round("12 in"), round("10 in"), round("8 in")));
    input.put("guests", 100);
    Slices.Result all = result(input);
    assertThat(all.portions()).isEqualTo(56 + 39 + 25);
    assertThat(all.missing()).isZero();
    input.put("keepTop", true);
    Slices.Result kept = result(input);
    assertThat(kept.portions()).isEqualTo(56 + 39);
    assertThat(kept.missing()).isEqualTo(5);
    assertThat(kept.tiers())
        .extracting(Slices.ServedTier::kept)
        .containsExactly(false, false, true);
  }

  @Test
  void all_that_cannot_be_meant_is_told_at_once() {
    Map<String, Object> input =
        Map.of(
            "tiers",
            List.of(round("8 in"), round("10 in")),
            "serving",
            "weding",
            "slice",
            Map.of("length", "2 in", "width", "1 in"));
    assertThat(Given.told(() -> read(input)))
        .containsExactly("exactly-one /slice", "not-allowed /serving", "inconsistent /tiers/1");
  }

  @Test
  void a_cake_that_cannot_be_is_refused() {
    assertThat(Given.told(() -> read(Map.of("cake", round("8 in"), "keepTop", true))))
        .containsExactly("inconsistent /keepTop");
    Map<String, Object> foreign = Map.of("shape", "square", "diameter", "8 in");
    assertThat(Given.told(() -> read(Map.of("cake", foreign))))
        .containsExactly("not-allowed /cake/diameter", "missing /cake/side");
    assertThat(Given.told(() -> read(Map.of("cake", round("0 in")))))
        .containsExactly("out-of-bounds /cake/diameter");
  }

  private static Map<String, Object> round(String diameter) {
    return Map.of("shape", "round", "diameter", diameter);
  }
}
