package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

class ContentsTest {
  /** 400 g of syrup finished are of 500 g in the pot: 20 % boil off, 2 % stay in the pot. */
  private static final Batch CAKE = batch();

  private static Batch batch() {
    Formula syrup =
        formula(
            """
            syrup {makeUpLoss=2 %, bakeLoss=20 %}: 300 g sugar-granulated; 200 g water""");
    Formula cake =
        formula(
            """
            cake {makeUpLoss=5 %, bakeLoss=10 %}: 600 g bread-flour; 392 g >syrup; \
            100 g oil-sunflower : remains=0.25; as needed salt""");
    Pantry pantry =
        new Pantry(Shelf.of(List.of(syrup, cake), List.of()), Pantry.Fittings.of(List.of()));
    return pantry.batch(FormulaRef.parse("cake"), null);
  }

  private static Formula formula(String text) {
    return new RecordReader(References.UNCHECKED, Limits.usual())
        .read(Formula.class, Card.read(text).get(0).tree());
  }

  @Test
  void what_stays_in_bowls_and_is_strained_off_is_not_in_it() {
    Contents contents = Contents.of(CAKE);
    double part = 392 / (0.98 * 0.8) / 500 * 0.98; // of the syrup as written, less its pot's share
    assertThat(contents.entries())
        .extracting(e -> e.line().ingredient().id())
        .containsExactlyInAnyOrder(
            "bread-flour", "oil-sunflower", "salt", "sugar-granulated", "water");
    assertThat(grams(contents, "bread-flour")).isEqualTo(600 * 0.95, within(1e-9));
    assertThat(grams(contents, "oil-sunflower")).isEqualTo(25 * 0.95, within(1e-9));
    assertThat(grams(contents, "sugar-granulated")).isEqualTo(300 * part * 0.95, within(1e-9));
    assertThat(grams(contents, "salt")).isZero();
  }

  @Test
  void what_went_in_is_what_came_out_and_the_water_that_was_lost() {
    Contents contents = Contents.of(CAKE);
    double potLost = 392 / 0.8 * 0.2 * 0.95;
    double madeUp = (600 + 392 + 25) * 0.95;
    assertThat(contents.mixedGrams()).isEqualTo(madeUp + potLost, within(1e-9));
    assertThat(contents.grams()).isEqualTo(madeUp * 0.9, within(1e-9));
  }

  @Test
  void each_line_knows_the_parts_it_came_by() {
    for (Contents.Entry entry : Contents.of(CAKE).entries()) {
      boolean inner = entry.line().path().startsWith("/lines/1/");
      assertThat(entry.through())
          .extracting(part -> part.formula().id())
          .isEqualTo(inner ? List.of("syrup") : List.of());
    }
  }

  @Test
  void the_composition_is_the_sum_over_the_entries() {
    Composition mix = CAKE.composition();
    double fat = 0;
    for (Contents.Entry entry : Contents.of(CAKE).entries()) {
      fat += entry.line().ingredient().per100g(Nutrient.FAT) * entry.grams() / 100;
    }
    assertThat(mix.amount(Nutrient.FAT)).isEqualTo(fat, within(1e-9));
    assertThat(mix.grams()).isEqualTo(Contents.of(CAKE).mixedGrams(), within(1e-9));
    assertThat(mix.known(Nutrient.FAT)).isEqualTo(1, within(1e-9));
  }

  private static double grams(Contents contents, String ingredient) {
    return contents.entries().stream()
        .filter(e -> e.line().ingredient().id().equals(ingredient))
        .mapToDouble(Contents.Entry::grams)
        .sum();
  }
}
