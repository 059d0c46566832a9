package tamis.plugin.stages;

import java.util.EnumMap;
import java.util.Map;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** The water of a food with what is dissolved in it; fat and flour are outside of it. */
public record WaterPhase(
    @Described(value = "Water", moreThan = "0 g", example = "40 g") Mass water,
    @Described("What is dissolved in it") Map<Solute, Mass> solutes) {
  public WaterPhase {
    solutes = Map.copyOf(solutes);
  }

  /** g of sodium chloride for a milligram of sodium. */
  private static final double SALT_PER_SODIUM_MG = 58.44 / 22.99 / 1000;

  static WaterPhase ofSucrose(double percent) {
    return new WaterPhase(
        Mass.ofGrams(100 - percent), Map.of(Solute.SUCROSE, Mass.ofGrams(percent)));
  }

  /** Of a mix; sugars whose kind is not told count as sucrose, which lowers the activity least. */
  static WaterPhase of(Composition mix) {
    Map<Solute, Mass> solutes = new EnumMap<>(Solute.class);
    double glucose = mix.amount(Nutrient.GLUCOSE) + mix.amount(Nutrient.GALACTOSE);
    double named =
        glucose
            + mix.amount(Nutrient.FRUCTOSE)
            + mix.amount(Nutrient.MALTOSE)
            + mix.amount(Nutrient.LACTOSE);
    double sucrose = Math.max(mix.amount(Nutrient.SUCROSE), mix.amount(Nutrient.SUGARS) - named);
    put(solutes, Solute.SUCROSE, sucrose);
    put(solutes, Solute.GLUCOSE, glucose);
    put(solutes, Solute.FRUCTOSE, mix.amount(Nutrient.FRUCTOSE));
    put(solutes, Solute.MALTOSE, mix.amount(Nutrient.MALTOSE));
    put(solutes, Solute.LACTOSE, mix.amount(Nutrient.LACTOSE));
    put(solutes, Solute.SORBITOL, mix.amount(Nutrient.POLYOLS));
    put(solutes, Solute.SALT, mix.amount(Nutrient.SODIUM) * SALT_PER_SODIUM_MG);
    return new WaterPhase(Mass.ofGrams(mix.amount(Nutrient.WATER)), solutes);
  }

  private static void put(Map<Solute, Mass> solutes, Solute solute, double grams) {
    if (grams > 0) {
      solutes.put(solute, Mass.ofGrams(grams));
    }
  }

  double waterMoles() {
    return water.grams() / Solutes.WATER_GRAMS_PER_MOLE;
  }

  double norrish() {
    double moles = waterMoles();
    for (Map.Entry<Solute, Mass> entry : solutes.entrySet()) {
      moles += entry.getValue().grams() / entry.getKey().gramsPerMole();
    }
    double pull = 0;
    for (Solute solute : Solute.values()) {
      Mass mass = solutes.getOrDefault(solute, Mass.zero());
      pull += Math.sqrt(solute.k()) * mass.grams() / solute.gramsPerMole() / moles;
    }
    return waterMoles() / moles * Math.exp(-pull * pull);
  }

  double moneyBorn() {
    double moles = 0;
    for (Solute solute : Solute.values()) {
      Mass mass = solutes.getOrDefault(solute, Mass.zero());
      moles += mass.grams() / solute.gramsPerMole();
    }
    return 1 / (1 + 0.27 * moles * 100 / water.grams());
  }
}
