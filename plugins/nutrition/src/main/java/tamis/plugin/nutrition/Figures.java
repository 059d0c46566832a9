package tamis.plugin.nutrition;

import java.util.EnumMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/**
 * Figures as they are worked out, not rounded. What no ingredient tells is left out: it is not
 * zero.
 */
public record Figures(
    @Described(value = "Energy by the rule of the regime", unit = "kcal")
        @Nullable Double energyKcal,
    @Described(value = "Energy by the rule of the regime, by factors of its own", unit = "kJ")
        @Nullable Double energyKj,
    @Described(
            value = "Energy as the tables of foods print it, by each food's own factors",
            unit = "kcal")
        @Nullable Double tableEnergyKcal,
    @Described(value = "Fat", unit = "g") @Nullable Double fat,
    @Described(value = "Saturated fatty acids", unit = "g") @Nullable Double saturates,
    @Described(value = "Monounsaturated fatty acids", unit = "g") @Nullable Double monounsaturates,
    @Described(value = "Polyunsaturated fatty acids", unit = "g") @Nullable Double polyunsaturates,
    @Described(value = "Trans fatty acids", unit = "g") @Nullable Double trans,
    @Described(value = "Cholesterol", unit = "mg") @Nullable Double cholesterolMg,
    @Described(
            value = "Carbohydrate: US by difference with fibre, EU and UK without fibre",
            unit = "g")
        @Nullable Double carbohydrate,
    @Described(value = "Fibre", unit = "g") @Nullable Double fibre,
    @Described(value = "Sugars, all together", unit = "g") @Nullable Double sugars,
    @Described(value = "Sugars that were added", unit = "g") @Nullable Double addedSugars,
    @Described(value = "Polyols", unit = "g") @Nullable Double polyols,
    @Described(value = "Starch", unit = "g") @Nullable Double starch,
    @Described(value = "Protein", unit = "g") @Nullable Double protein,
    @Described(value = "Salt: sodium times 2.5", unit = "g") @Nullable Double salt,
    @Described(value = "Sodium", unit = "mg") @Nullable Double sodiumMg,
    @Described(value = "Vitamin D", unit = "µg") @Nullable Double vitaminDUg,
    @Described(value = "Calcium", unit = "mg") @Nullable Double calciumMg,
    @Described(value = "Iron", unit = "mg") @Nullable Double ironMg,
    @Described(value = "Potassium", unit = "mg") @Nullable Double potassiumMg,
    @Described(value = "Water, after baking", unit = "g") @Nullable Double water,
    @Described(value = "Ash", unit = "g") @Nullable Double ash,
    @Described(value = "Alcohol", unit = "g") @Nullable Double alcohol,
    @Described(value = "Caffeine", unit = "mg") @Nullable Double caffeineMg,
    @Described("Vitamins and minerals that ingredients' documents tell, beyond these")
        Map<LabelFigure, Double> others) {

  static Figures of(
      Function<LabelFigure, @Nullable Double> amount, @Nullable Double tableEnergyKcal) {
    Map<LabelFigure, Double> others = new EnumMap<>(LabelFigure.class);
    for (LabelFigure figure : LabelFigure.values()) {
      @Nullable Double value = figure.isCommon() ? null : amount.apply(figure);
      if (value != null) {
        others.put(figure, value);
      }
    }
    return new Figures(
        amount.apply(LabelFigure.ENERGY_KCAL),
        amount.apply(LabelFigure.ENERGY_KJ),
        tableEnergyKcal,
        amount.apply(LabelFigure.FAT),
        amount.apply(LabelFigure.SATURATES),
        amount.apply(LabelFigure.MONOUNSATURATES),
        amount.apply(LabelFigure.POLYUNSATURATES),
        amount.apply(LabelFigure.TRANS),
        amount.apply(LabelFigure.CHOLESTEROL),
        amount.apply(LabelFigure.CARBOHYDRATE),
        amount.apply(LabelFigure.FIBRE),
        amount.apply(LabelFigure.SUGARS),
        amount.apply(LabelFigure.ADDED_SUGARS),
        amount.apply(LabelFigure.POLYOLS),
        amount.apply(LabelFigure.STARCH),
        amount.apply(LabelFigure.PROTEIN),
        amount.apply(LabelFigure.SALT),
        amount.apply(LabelFigure.SODIUM),
        amount.apply(LabelFigure.VITAMIN_D),
        amount.apply(LabelFigure.CALCIUM),
        amount.apply(LabelFigure.IRON),
        amount.apply(LabelFigure.POTASSIUM),
        amount.apply(LabelFigure.WATER),
        amount.apply(LabelFigure.ASH),
        amount.apply(LabelFigure.ALCOHOL),
        amount.apply(LabelFigure.CAFFEINE),
        others);
  }
}
