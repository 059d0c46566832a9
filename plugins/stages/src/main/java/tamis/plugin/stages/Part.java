package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.thermal.Proximates;

/** One of the parts that meet. */
public record Part(
    @Described(value = "What it is called", example = "foam", most = 80) @Nullable String name,
    @Described(value = "Id or name of the ingredient", example = "egg-yolk")
        @Nullable IngredientRef ingredient,
    @Described("What it is made of, in percent") @Nullable Proximates composition,
    @Described(value = "A formula that it is", example = "pastry-cream")
        @Nullable FormulaRef formula,
    @Described("Which fat it is, where only the composition is told") @Nullable FatKind fat,
    @Described(value = "How much", moreThan = "0 g", atMost = "1000 kg", example = "100 g")
        @Nullable Mass mass,
    @Described(value = "Its temperature", atLeast = "-40 °C", atMost = "150 °C", example = "20 °C")
        Temperature temperature) {
  public Part {
    Faults faults = new Faults();
    int ways =
        (ingredient == null ? 0 : 1) + (composition == null ? 0 : 1) + (formula == null ? 0 : 1);
    if (ways > 1) {
      faults.add(
          FaultCode.EXACTLY_ONE, "", "give one of ingredient, composition and formula, not more");
    }
    if (fat != null && composition == null) {
      faults.add(FaultCode.INCONSISTENT, "/fat", "fat is told only beside a composition");
    }
    faults.refuseIfAny();
  }

  /** Whether heat can be counted: it is known what it is and how much. */
  boolean isWhole() {
    return mass != null && (ingredient != null || composition != null || formula != null);
  }

  /** Tells what is missing to count heat. */
  void needWhole(String pointer, Faults faults) {
    if (mass == null) {
      faults.add(FaultCode.MISSING, pointer + "/mass", "the mass of the part is missing");
    }
    if (ingredient == null && composition == null && formula == null) {
      faults.add(
          FaultCode.MISSING,
          pointer + "/ingredient",
          "say what the part is: an ingredient, a composition or a formula");
    }
  }

  String called(int index) {
    if (name != null) {
      return name;
    }
    if (ingredient != null) {
      return ingredient.name();
    }
    return formula == null ? "part " + (index + 1) : formula.toString();
  }

  double kilograms() {
    return mass == null ? 0 : mass.grams() / 1000;
  }
}
