package tamis.plugin.equivalents;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

class EquivalentTablesTest {
  @Test
  void every_ingredient_of_the_tables_is_known() {
    for (Row row : Pair.TABLE.rows()) {
      assertThat(ingredient(row.text("from"))).isNotNull();
      assertThat(ingredient(row.text("into"))).isNotNull();
    }
    for (Row row : Pair.WITH.rows()) {
      assertThat(Pair.TABLE.row(row.text("from") + "/" + row.text("into")))
          .as(row.key())
          .isNotNull();
      assertThat(ingredient(row.text("with"))).isNotNull();
    }
  }

  @Test
  void low_typical_and_high_do_not_run_backwards() {
    for (Row row : Pair.TABLE.rows()) {
      assertThat(row.number("low_g_per_g"))
          .as(row.key())
          .isLessThanOrEqualTo(row.number("typical_g_per_g"));
      assertThat(row.number("typical_g_per_g"))
          .as(row.key())
          .isLessThanOrEqualTo(row.number("high_g_per_g"));
    }
  }

  /** Rows said to have equal solids are held against the composition of the ingredients. */
  @Test
  void dried_goods_with_their_water_have_the_solids_of_the_fresh_ones() {
    int checked = 0;
    for (Row row : Pair.TABLE.rows()) {
      if (row.text("locator").endsWith("equal solids")
          && !row.text("locator").contains("weight for weight")) {
        double solids = solids(row.text("into")) * row.number("typical_g_per_g");
        assertThat(solids).as(row.key()).isCloseTo(solids(row.text("from")), within(0.02));
        assertThat(mass(row)).as(row.key()).isCloseTo(1, within(0.001));
        checked++;
      }
    }
    assertThat(checked).isEqualTo(9);
  }

  @Test
  void rows_of_equal_fat_have_equal_fat() {
    int checked = 0;
    for (Row row : Pair.TABLE.rows()) {
      if (row.text("locator").endsWith("equal fat")) {
        double fat = nutrient(row.text("into"), Nutrient.FAT) * row.number("typical_g_per_g");
        for (AlsoAdd also : new Pair(row, false).with(1, new Notes())) {
          fat += nutrient(also.ingredient(), Nutrient.FAT) * also.grams();
        }
        assertThat(fat)
            .as(row.key())
            .isCloseTo(nutrient(row.text("from"), Nutrient.FAT), within(0.02));
        checked++;
      }
    }
    assertThat(checked).isEqualTo(3);
  }

  @Test
  void unsalted_butter_with_its_salt_has_the_sodium_of_salted() {
    Row row = Pair.TABLE.row("butter-salted/butter-unsalted");
    double salt = new Pair(row, false).with(100, new Notes()).get(0).grams();
    double sodium =
        nutrient("butter-unsalted", Nutrient.SODIUM)
            + salt * nutrient("salt", Nutrient.SODIUM) / 100;

    assertThat(sodium).isCloseTo(nutrient("butter-salted", Nutrient.SODIUM), within(10.0));
  }

  @Test
  void each_form_of_gelatine_has_one_usual_grade() {
    for (String form : Gelatine.forms()) {
      assertThat(Gelatine.BLOOMS.rows())
          .filteredOn(row -> row.text("form").equals(form) && row.yes("usual"))
          .as(form)
          .hasSize(1);
    }
  }

  private static double mass(Row row) {
    return row.number("typical_g_per_g")
        + new Pair(row, false).with(1, new Notes()).stream().mapToDouble(AlsoAdd::grams).sum();
  }

  private static double solids(String ingredient) {
    return 100 - nutrient(ingredient, Nutrient.WATER);
  }

  private static double nutrient(String ingredient, Nutrient nutrient) {
    return ingredient(ingredient).per100g(nutrient);
  }

  private static Ingredient ingredient(String id) {
    return ReferenceIngredients.standard().byId(id);
  }
}
