package tamis.engine.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Map;
import org.junit.jupiter.api.Test;

class CompositionTest {
  private static final Composition CREAM =
      Composition.of(Map.of(Nutrient.WATER, 60.0, Nutrient.FAT, 35.0, Nutrient.TRANS, 1.2), 200);
  private static final Composition SUGAR =
      Composition.of(Map.of(Nutrient.WATER, 0.0, Nutrient.SUGARS, 100.0), 100);

  @Test
  void amounts_add_up_and_the_known_part_is_told() {
    Composition mix = CREAM.plus(SUGAR);
    assertThat(mix.grams()).isEqualTo(300);
    assertThat(mix.amount(Nutrient.WATER)).isEqualTo(120);
    assertThat(mix.per100g(Nutrient.WATER)).isEqualTo(40);
    assertThat(mix.known(Nutrient.WATER)).isEqualTo(1);
    assertThat(mix.known(Nutrient.TRANS)).isCloseTo(2.0 / 3, within(1e-12));
    assertThat(mix.known(Nutrient.SUGARS)).isCloseTo(1.0 / 3, within(1e-12));
  }

  @Test
  void what_nobody_tells_is_not_known_rather_than_zero() {
    assertThat(CREAM.plus(SUGAR).per100g(Nutrient.PROTEIN)).isNull();
    assertThat(CREAM.plus(SUGAR).known(Nutrient.PROTEIN)).isZero();
  }

  @Test
  void the_order_of_parts_does_not_matter() {
    assertThat(CREAM.plus(SUGAR)).isEqualTo(SUGAR.plus(CREAM));
  }

  @Test
  void water_that_is_lost_leaves_the_rest_where_it_was() {
    Composition baked = CREAM.withoutWater(20);
    assertThat(baked.grams()).isEqualTo(180);
    assertThat(baked.amount(Nutrient.WATER)).isEqualTo(100);
    assertThat(baked.amount(Nutrient.FAT)).isEqualTo(70);
    assertThat(baked.known(Nutrient.FAT)).isEqualTo(1);
    assertThat(CREAM.withoutWater(500).amount(Nutrient.WATER)).isZero();
  }
}
