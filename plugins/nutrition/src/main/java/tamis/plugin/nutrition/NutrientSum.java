package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Contents;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;

/**
 * Nutrients of a finished batch: the sum over what went in, in the mass that is left. Baking takes
 * water, so it changes no gram of fat, protein or carbohydrate, only what 100 g hold of it.
 */
final class NutrientSum {
  /** Gas of leavening and rounding of tables; beyond it a loss cannot be water alone. */
  private static final double NOT_WATER = 0.02;

  private final Baked baked;
  private final Map<String, Map<Nutrient, Double>> known = new HashMap<>();
  private final Composition least;
  private final Composition most;
  private final Composition table;

  private NutrientSum(Baked baked, LabelFacts facts) {
    this.baked = baked;
    this.least = baked.contents().composition(i -> known(facts, i));
    this.most = baked.contents().composition(i -> facts.most(i, known(facts, i)));
    this.table = baked.contents().composition(NutrientSum::tableEnergy);
  }

  /**
   * The sum.
   *
   * @throws Refusal {@code impossible} at {@code pointer} if more is lost than there is water
   */
  static NutrientSum of(Baked baked, LabelFacts facts, String pointer) {
    NutrientSum sum = new NutrientSum(baked, facts);
    double mixed = baked.contents().mixedGrams();
    double canGo = sum.most.amount(Nutrient.WATER) + sum.alcoholInTheRaw() + NOT_WATER * mixed;
    if (baked.lostGrams() > canGo) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          pointer,
          "baking takes water: "
              + Rounded.plain(baked.lostGrams() / mixed * 100, 0.1)
              + " % are lost in all, but only "
              + Rounded.plain(sum.most.amount(Nutrient.WATER) / mixed * 100, 0.1)
              + " % of the mix is water");
    }
    return sum;
  }

  private Map<Nutrient, Double> known(LabelFacts facts, Ingredient ingredient) {
    return known.computeIfAbsent(ingredient.id(), id -> facts.known(ingredient));
  }

  private static Map<Nutrient, Double> tableEnergy(Ingredient ingredient) {
    Map<Nutrient, Double> energy = new EnumMap<>(Nutrient.class);
    @Nullable Double kcal = ingredient.known(Nutrient.ENERGY_KCAL);
    if (kcal != null) {
      energy.put(Nutrient.ENERGY_KCAL, kcal);
    }
    return energy;
  }

  private double alcoholInTheRaw() {
    return baked.contents().composition().amount(Nutrient.ALCOHOL);
  }

  /** What {@code grams} of the finished product hold, or null if nothing is known of it. */
  @Nullable Double in(double grams, LabelFigure figure) {
    @Nullable Double amount = least.amounts().get(figure.nutrient());
    return amount == null ? null : (Double) in(grams, figure, amount);
  }

  /** What they hold at most, if ingredients hold all they can of what they do not tell. */
  double mostIn(double grams, LabelFigure figure) {
    return in(grams, figure, most.amount(figure.nutrient()));
  }

  private double in(double grams, LabelFigure figure, double amount) {
    double left = figure == LabelFigure.WATER ? Math.max(0, amount - waterLost()) : amount;
    return figure.of(left / baked.grams() * grams);
  }

  private double waterLost() {
    double alcohol = alcoholInTheRaw() - least.amount(Nutrient.ALCOHOL);
    return Math.max(0, baked.lostGrams() - alcohol);
  }

  @Nullable Double tableKcal(double grams) {
    @Nullable Double amount = table.amounts().get(Nutrient.ENERGY_KCAL);
    return amount == null ? null : (Double) (amount / baked.grams() * grams);
  }

  boolean isTableKcalWhole() {
    return isWhole(table.known(Nutrient.ENERGY_KCAL));
  }

  /** The part of the mass at mixing for which a figure is known. */
  double known(LabelFigure figure) {
    double known = least.known(figure.nutrient());
    return isWhole(known) ? 1 : known;
  }

  /** Sums of the same masses in another order differ by rounding only. */
  private static boolean isWhole(double known) {
    return known >= 1 - 1e-9;
  }

  /** Ids of ingredients with mass that do not tell a figure. */
  List<String> silent(LabelFigure figure) {
    List<String> silent = new ArrayList<>();
    for (Contents.Entry entry : baked.contents().entries()) {
      Ingredient ingredient = entry.line().ingredient();
      if (entry.grams() > 0
          && !known.getOrDefault(ingredient.id(), Map.of()).containsKey(figure.nutrient())
          && !silent.contains(ingredient.id())) {
        silent.add(ingredient.id());
      }
    }
    return silent;
  }

  /** All figures of so many grams. */
  Figures figures(double grams) {
    return Figures.of(figure -> in(grams, figure), tableKcal(grams));
  }
}
