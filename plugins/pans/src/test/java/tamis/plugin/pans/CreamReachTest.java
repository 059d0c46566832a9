package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.note.Remark;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class CreamReachTest extends CalculationContract<CreamReach.Input, CreamReach.Result> {
  @Override
  protected CreamReach calculation() {
    return new CreamReach();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @Test
  void cream_covers_as_many_cakes_as_coating_asks_for() {
    // 8 in × 4 in with a coat of a quarter inch takes 40.104394 cubic inches, 657.19 ml.
    Map<String, Object> input = coat("0.25 in");
    input.put("volume", "2 l");
    input.put(
        "cakes", List.of(Map.of("shape", "round", "diameter", "8 in", "layerHeight", "4 in")));
    CreamReach.Covered covered = result(input).covers().get(0);
    assertThat(covered.millilitres()).isEqualTo(657.19, within(0.01));
    assertThat(covered.wholeCakes()).isEqualTo(3);
    assertThat(covered.leftMillilitres()).isEqualTo(2000 - 3 * 657.19, within(0.05));
    assertThat(covered.cake()).isEqualTo("round 20.3 cm, 1 layer of 10.2 cm");
  }

  @Test
  void without_cakes_of_ones_own_the_usual_ones_are_tried() {
    Map<String, Object> input = coat("5 mm");
    input.put("cream", "850 g");
    input.put("density", "0.5 g/ml");
    CreamReach.Result result = result(input);
    assertThat(result.millilitres()).isEqualTo(1700, within(1e-9));
    assertThat(result.covers()).hasSameSizeAs(CreamReach.CAKES.rows());
    for (CreamReach.Covered covered : result.covers()) {
      assertThat(covered.wholeCakes() * covered.millilitres() + covered.leftMillilitres())
          .isEqualTo(1700, within(1e-6));
    }
  }

  @Test
  void a_usual_cake_that_is_too_small_for_the_coat_is_left_out_and_named() {
    Map<String, Object> input = coat("3.8 cm");
    input.put("volume", "9 l");
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .containsExactly("cake-left-out");
    assertThat(result(input).covers()).hasSize(CreamReach.CAKES.rows().size() - 1);
  }

  @Test
  void a_cake_of_ones_own_that_is_too_small_is_refused() {
    Map<String, Object> input = coat("5.5 cm");
    input.put("volume", "1 l");
    input.put("cakes", List.of(Given.round(30, 2, 4), Given.round(10, 2, 4)));
    assertThat(Given.told(() -> read(input))).containsExactly("inconsistent /cakes/1");
  }

  @Test
  void a_mass_without_density_is_refused() {
    Map<String, Object> input = coat("5 mm");
    input.put("cream", "850 g");
    assertThat(Given.told(() -> read(input))).containsExactly("no-density /cream");
  }

  private static Map<String, Object> coat(String thickness) {
    return new HashMap<>(Map.of("top", thickness, "side", thickness));
  }
}
