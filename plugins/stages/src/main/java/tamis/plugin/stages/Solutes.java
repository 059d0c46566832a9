package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;

/**
 * What is dissolved in a syrup, by moles. The activity of water over sucrose is that of Starzak and
 * Peacock; other sugars take part by their own molar mass, and their pull on water in proportion to
 * the constants of Norrish, which makes a mixture an estimate.
 *
 * @param grams solids
 * @param moles molecules in them
 * @param pull sum of √K times moles, K after Norrish
 */
record Solutes(double grams, double moles, double pull) {
  static final double WATER_GRAMS_PER_MOLE = 18.01528;
  static final double SUCROSE_GRAMS_PER_MOLE = 342.2965;
  static final double HEXOSE_GRAMS_PER_MOLE = 180.156;

  /** What is left of a 40 DE glucose syrup beside its glucose and maltose: about six units long. */
  static final double DEXTRIN_GRAMS_PER_MOLE = 1000;

  /** Norrish's constants: sucrose, the simple sugars, maltose, and dextrin taken as sucrose. */
  static final double SUCROSE_K = 6.47;

  static final double HEXOSE_K = 2.25;
  static final double MALTOSE_K = 4.54;
  static final double LACTOSE_K = 10.2;

  /** Starzak and Peacock: Q in J/mol, a and b. */
  private static final double Q = -17_638;

  private static final double A = -1.0038;
  private static final double B = -0.24653;
  private static final double GAS_CONSTANT = 8.314462618;

  /** The end of the fitted range. */
  static final double MOST_PERCENT = 98;

  private static final double HOTTEST = 260;

  static final Solutes SUCROSE = of(1, SUCROSE_GRAMS_PER_MOLE, SUCROSE_K);
  static final Solutes NONE = new Solutes(0, 0, 0);

  static Solutes of(double grams, double gramsPerMole, double k) {
    double moles = grams / gramsPerMole;
    return new Solutes(grams, moles, Math.sqrt(k) * moles);
  }

  /** The sugars of a mix; sugars whose kind is not told count as sucrose. */
  static Solutes of(Composition mix) {
    double sucrose = mix.amount(Nutrient.SUCROSE);
    double hexose =
        mix.amount(Nutrient.GLUCOSE)
            + mix.amount(Nutrient.FRUCTOSE)
            + mix.amount(Nutrient.GALACTOSE);
    double maltose = mix.amount(Nutrient.MALTOSE);
    double lactose = mix.amount(Nutrient.LACTOSE);
    double named = sucrose + hexose + maltose + lactose;
    @Nullable Double told = mix.amounts().get(Nutrient.SUGARS);
    double carbohydrate = mix.amount(Nutrient.CARBOHYDRATE) - mix.amount(Nutrient.FIBRE);
    double sugars = Math.max(named, told == null ? carbohydrate : told);
    double dextrin = Math.max(0, carbohydrate - mix.amount(Nutrient.STARCH) - sugars);
    return of(sucrose + sugars - named, SUCROSE_GRAMS_PER_MOLE, SUCROSE_K)
        .plus(of(hexose, HEXOSE_GRAMS_PER_MOLE, HEXOSE_K))
        .plus(of(maltose, SUCROSE_GRAMS_PER_MOLE, MALTOSE_K))
        .plus(of(lactose, SUCROSE_GRAMS_PER_MOLE, LACTOSE_K))
        .plus(of(dextrin, DEXTRIN_GRAMS_PER_MOLE, SUCROSE_K));
  }

  Solutes plus(Solutes other) {
    return new Solutes(grams + other.grams, moles + other.moles, pull + other.pull);
  }

  /** Whether it is sucrose alone, for which the equation was fitted. */
  boolean isSucrose() {
    return Math.abs(grams - moles * SUCROSE_GRAMS_PER_MOLE) < 1e-6 * grams
        && Math.abs(pull - Math.sqrt(SUCROSE_K) * moles) < 1e-6 * pull;
  }

  /** Mole fraction of what is dissolved. */
  double moleFraction(double percent) {
    double dissolved = percent / grams * moles;
    return dissolved / (dissolved + (100 - percent) / WATER_GRAMS_PER_MOLE);
  }

  double waterActivity(double percent, double celsius) {
    if (percent <= 0) {
      return 1;
    }
    double x = moleFraction(percent);
    double relative = pull / moles / Math.sqrt(SUCROSE_K);
    double kelvin = celsius + WaterVapour.ZERO_CELSIUS_IN_KELVIN;
    double lnGamma =
        Q * relative * relative / (GAS_CONSTANT * kelvin) * (1 + A * x + B * x * x) * x * x;
    return (1 - x) * Math.exp(lnGamma);
  }

  /** Temperature in °C at which a syrup of so many percent boils. */
  double boilingPoint(double percent, double pascals) {
    double water = WaterVapour.boilingPoint(pascals);
    return percent <= 0
        ? water
        : Roots.between(
            water,
            HOTTEST,
            t -> Math.log(waterActivity(percent, t) * WaterVapour.pressure(t) / pascals));
  }

  /** Percent of solids of a syrup that boils at this temperature. */
  double percent(double celsius, double pascals) {
    double activity = pascals / WaterVapour.pressure(celsius);
    if (activity >= 1) {
      return 0;
    }
    return Roots.between(0, 99.999, p -> Math.log(waterActivity(p, celsius) / activity));
  }

  /** What more than this is hotter than the equation was fitted for. */
  double hottest(double pascals) {
    return boilingPoint(MOST_PERCENT, pascals);
  }

  /**
   * @throws Refusal {@code outside-range} above the range of the equation
   */
  void checkRange(double celsius, double pascals, String pointer) {
    double hottest = hottest(pascals);
    if (celsius > hottest) {
      throw Refusal.of(
          FaultCode.OUTSIDE_RANGE,
          pointer,
          String.format(
              java.util.Locale.ROOT,
              "the boiling points of syrups are known to %.0f %% of sugar, %.1f °C here; %.1f °C is above that",
              MOST_PERCENT,
              hottest,
              celsius));
    }
  }
}
