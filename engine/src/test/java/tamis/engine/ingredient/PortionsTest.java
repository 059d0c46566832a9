package tamis.engine.ingredient;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.RandomTexts;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Units;
import tamis.engine.table.Row;

/** Every cup, spoon and piece that was weighed gives its grams again; volumes and back. */
class PortionsTest {
  /** Printed grams have four digits at most; ours are their twelve-digit quotient. */
  private static final double ROUNDING = 1e-9;

  static List<Row> densities() {
    return IngredientTables.DENSITIES.rows();
  }

  static List<Row> pieces() {
    return IngredientTables.PIECES.rows();
  }

  static List<Ingredient> withDensity() {
    return ReferenceIngredients.standard().all().stream()
        .filter(ingredient -> !ingredient.densities().isEmpty())
        .toList();
  }

  private static Ingredient ingredient(String id) {
    return ReferenceIngredients.standard().byId(id);
  }

  private static Weighing weighing(Notes notes) {
    return new Weighing(Measures.US, "/quantity", "/grams", notes);
  }

  private static Spread grams(String quantity, String id, String state) {
    return weighing(new Notes()).grams(Quantity.parse(quantity), ingredient(id), state);
  }

  @Test
  void a_measure_of_every_row_weighs_what_the_source_prints_and_cites_that_row() {
    assertThat(densities()).hasSizeGreaterThanOrEqualTo(990);
    for (Row row : densities()) {
      Notes notes = new Notes();
      Spread grams =
          weighing(notes)
              .grams(
                  Quantity.parse("1 " + row.text("measure")),
                  ingredient(row.text("ingredient")),
                  row.text("state"));
      double printed = row.number("measured_grams");
      assertThat(grams.typical()).as(row.key()).isEqualTo(printed, within(printed * ROUNDING));
      assertThat(notes.sources()).as(row.key()).hasSize(1);
      assertThat(notes.sources().get(0).row()).isEqualTo(row.key());
      assertThat(notes.sources().get(0).source()).isEqualTo(row.source());
      assertThat(notes.sources().get(0).pointers()).containsExactly("/grams");
    }
  }

  @Test
  void the_density_of_every_row_is_its_printed_grams_over_the_millilitres_of_its_measure() {
    for (Row row : densities()) {
      double millilitres = Units.standard().unit(row.text("measure"), Measures.US).factor();
      double printed = row.number("measured_grams");
      assertThat(row.number("typical_g_per_ml") * millilitres)
          .as(row.key())
          .isEqualTo(printed, within(printed * ROUNDING));
    }
  }

  @Test
  void a_piece_of_every_row_weighs_what_the_table_says_and_cites_that_row() {
    assertThat(pieces()).hasSizeGreaterThanOrEqualTo(320);
    for (Row row : pieces()) {
      Notes notes = new Notes();
      Spread grams =
          weighing(notes)
              .grams(
                  Quantity.parse("3 " + row.text("piece")),
                  ingredient(row.text("ingredient")),
                  row.textOrNull("state"));
      Spread one = new Spread(row.number("low_g"), row.number("typical_g"), row.number("high_g"));
      assertThat(grams).as(row.key()).isEqualTo(one.times(3));
      assertThat(notes.sources().get(0).row()).isEqualTo(row.key());
    }
  }

  @ParameterizedTest(name = "{0} of {1} ({2}) is {3} g")
  @CsvSource({
    "1 stick, butter-unsalted, , 113.398, 0.01",
    "4 stick, butter-unsalted, , 453.592, 0.01",
    "1 each, egg, , 50, 0",
    "3 each, egg, , 150, 0",
    "1 each, egg, medium, 44, 0",
    "1 each, egg, extra-large, 56, 0",
    "1 each, egg-medium, , 44, 0",
    "1 each, egg-small, , 38, 0",
    "1 each, egg-jumbo, , 63, 0",
    "1 each, egg-eu-l, , 60, 0",
    "1 each, egg-white, , 33, 0",
    "1 each, egg-yolk, , 17, 0",
    "1 dozen, egg, , 600, 0",
    "2 1/4 cup, all-purpose-flour, , 281.25, 0.001",
    "1 cup, sugar-powdered, , 120, 0.001",
    "1 cup, sugar-powdered, sifted, 100, 0.001",
    "1 cup, sugar-brown, packed, 220, 0.001",
    "1 cup, sugar-brown, unpacked, 145, 0.001",
    "16 tbsp, butter-unsalted, , 227.2, 0.001",
    "1 lb, water, , 453.59237, 1e-9",
    "250 g, all-purpose-flour, , 250, 0"
  })
  void usual_quantities_weigh_what_bakers_know(
      String quantity, String id, String state, double grams, double tolerance) {
    assertThat(grams(quantity, id, state).typical()).isEqualTo(grams, within(tolerance));
  }

  @ParameterizedTest(name = "{0} by {1} measures is {2} g of water")
  @CsvSource({"1 cup, METRIC, 250", "1 cup, AU, 250", "1 tbsp, AU, 20", "1 cup, JP, 200"})
  void the_density_of_a_us_cup_serves_the_cups_of_others(
      String quantity, Measures measures, double millilitres) {
    Ingredient water = ingredient("water");
    Spread grams =
        new Weighing(measures, "", "", new Notes()).grams(Quantity.parse(quantity), water, null);
    assertThat(grams.typical()).isEqualTo(millilitres, within(millilitres * 0.005));
  }

  @ParameterizedTest
  @MethodSource("withDensity")
  void grams_in_any_measure_and_back_are_the_same_grams(Ingredient ingredient) {
    RandomTexts random = new RandomTexts(RandomTexts.SEED);
    Weighing weighing = weighing(new Notes());
    for (String state : ingredient.densities().stream().map(StateDensity::state).toList()) {
      for (String measure : List.of("cup", "tbsp", "tsp", "fl oz", "ml", "l", "imperial pint")) {
        double grams = random.number(0.01, 5_000);
        Spread one = weighing.gramsPerUnit(measure, ingredient, state);
        Quantity quantity = Quantity.of(grams / one.typical(), measure);
        Spread back = weighing.grams(quantity, ingredient, state);
        assertThat(back.typical())
            .as("seed %s, %s of %s", RandomTexts.SEED, quantity, ingredient.id())
            .isEqualTo(grams, within(grams * 1e-12));
        assertThat(back.typical()).isBetween(back.low(), back.high());
      }
    }
  }

  @Test
  void most_foods_have_a_density() {
    assertThat(withDensity()).hasSizeGreaterThanOrEqualTo(400);
  }

  @Test
  void every_measure_of_the_table_is_a_volume_and_every_piece_a_piece() {
    assertThat(densities())
        .allSatisfy(
            row ->
                assertThat(Units.standard().dimension(row.text("measure")))
                    .isEqualTo(Dimension.VOLUME));
    assertThat(pieces())
        .allSatisfy(
            row ->
                assertThat(Units.standard().dimension(row.text("piece")))
                    .isEqualTo(
                        row.text("piece").equals("each") ? Dimension.COUNT : Dimension.PIECE));
  }
}
