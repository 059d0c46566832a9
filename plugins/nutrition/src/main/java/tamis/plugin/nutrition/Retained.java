package tamis.plugin.nutrition;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/**
 * What cooking leaves of vitamins, minerals and alcohol: per ingredient and method, as the mixed
 * method has it; the loss of mass is counted once for the whole formula.
 */
final class Retained {
  /** Groups of foods of the table, by kind of ingredient. */
  private static final Map<String, String> GROUPS =
      Map.ofEntries(
          Map.entry("flour", "cereals"),
          Map.entry("grain", "cereals"),
          Map.entry("dough", "cereals"),
          Map.entry("egg", "eggs"),
          Map.entry("dairy", "dairy"),
          Map.entry("cheese", "dairy"),
          Map.entry("fruit", "fruit"),
          Map.entry("dried-fruit", "fruit"),
          Map.entry("juice", "fruit"),
          Map.entry("vegetable", "vegetables"),
          Map.entry("nut", "nuts"),
          Map.entry("seed", "nuts"));

  private final @Nullable Cooking cooking;
  private final @Nullable AlcoholCooking alcohol;
  private final List<Retention> own;
  private final Notes notes;

  Retained(
      @Nullable Cooking cooking,
      @Nullable AlcoholCooking alcohol,
      List<Retention> own,
      Notes notes) {
    this.cooking = cooking;
    this.alcohol = alcohol;
    this.own = own;
    this.notes = notes;
  }

  /** The part that is left. */
  double part(Ingredient ingredient, Nutrient nutrient) {
    for (Retention one : own) {
      if (one.nutrient() == nutrient && one.isOf(ingredient)) {
        return one.part().value();
      }
    }
    @Nullable Row row = row(ingredient, nutrient);
    if (row == null) {
      return 1;
    }
    notes.cite(row, "/per100g");
    return row.number("percent") / 100;
  }

  private @Nullable Row row(Ingredient ingredient, Nutrient nutrient) {
    if (nutrient == Nutrient.ALCOHOL) {
      return alcohol == null ? null : FigureTables.ALCOHOL.row(alcohol.toString());
    }
    @Nullable String kind = ingredient.kind();
    @Nullable String group = kind == null ? null : GROUPS.get(kind);
    return cooking == null || group == null
        ? null
        : FigureTables.RETENTION.row(group + "/" + cooking + "/" + nutrient);
  }
}
