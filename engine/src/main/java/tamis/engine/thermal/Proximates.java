package tamis.engine.thermal;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.record.Described;

/**
 * What a food is made of, in percent of its mass, as heat capacity needs it. What is left out is
 * not there. Carbohydrate is total: it includes fibre, which is told again by itself.
 */
public record Proximates(
    @Described(value = "Water", unit = "%", atLeast = "0", atMost = "100", example = "75.33")
        @Nullable Double water,
    @Described(value = "Protein", unit = "%", atLeast = "0", atMost = "100", example = "12.49")
        @Nullable Double protein,
    @Described(value = "Fat", unit = "%", atLeast = "0", atMost = "100", example = "10.02")
        @Nullable Double fat,
    @Described(
            value = "Carbohydrate with fibre",
            unit = "%",
            atLeast = "0",
            atMost = "100",
            example = "1.22")
        @Nullable Double carbohydrate,
    @Described(
            value = "Fibre, already in the carbohydrate",
            unit = "%",
            atLeast = "0",
            atMost = "100",
            example = "0")
        @Nullable Double fibre,
    @Described(value = "Ash", unit = "%", atLeast = "0", atMost = "100", example = "0.94")
        @Nullable Double ash) {
  /** What rounding of printed compositions adds up to at most. */
  private static final double MOST = 100.5;

  public Proximates {
    Faults faults = new Faults();
    double sum = of(water) + of(protein) + of(fat) + of(carbohydrate) + of(ash);
    if (sum > MOST) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              "",
              shown(sum) + " %",
              "at most 100 %",
              "the composition adds up to " + shown(sum) + " %; at most 100 % is possible"));
    }
    if (sum == 0) {
      faults.add(
          FaultCode.MISSING,
          "",
          "the composition is empty; give water, protein, fat, carbohydrate or ash in percent");
    }
    if (of(fibre) > of(carbohydrate) + 1e-9) {
      faults.add(
          FaultCode.INCONSISTENT,
          "/fibre",
          "fibre is part of the carbohydrate: "
              + shown(of(fibre))
              + " % is more than "
              + shown(of(carbohydrate))
              + " %");
    }
    faults.refuseIfAny();
  }

  /** Percentages of a mix; more than 100 % in a table of analyses is brought back to 100 %. */
  public static Proximates of(Composition mix) {
    double[] parts = {
      percent(mix, Nutrient.WATER),
      percent(mix, Nutrient.PROTEIN),
      percent(mix, Nutrient.FAT),
      percent(mix, Nutrient.CARBOHYDRATE),
      percent(mix, Nutrient.ASH)
    };
    double sum = 0;
    for (double part : parts) {
      sum += part;
    }
    double by = sum > 100 ? 100 / sum : 1;
    double carbohydrate = parts[3] * by;
    double fibre = Math.min(percent(mix, Nutrient.FIBRE) * by, carbohydrate);
    return new Proximates(
        parts[0] * by, parts[1] * by, parts[2] * by, carbohydrate, fibre, parts[4] * by);
  }

  /** Pure water. */
  public static Proximates ofWater() {
    return new Proximates(100.0, null, null, null, null, null);
  }

  /** Sum of all parts, fibre counted once; below 100 if something was not told. */
  public double sum() {
    return of(water) + of(protein) + of(fat) + of(carbohydrate) + of(ash);
  }

  double of(Component component) {
    return switch (component) {
      case WATER -> of(water);
      case PROTEIN -> of(protein);
      case FAT -> of(fat);
      case CARBOHYDRATE -> of(carbohydrate);
      case FIBRE -> of(fibre);
      case ASH -> of(ash);
    };
  }

  private static double percent(Composition mix, Nutrient nutrient) {
    @Nullable Double per100g = mix.per100g(nutrient);
    return per100g == null ? 0 : per100g;
  }

  private static double of(@Nullable Double percent) {
    return percent == null ? 0 : percent;
  }

  private static String shown(double percent) {
    return Bounds.plain(Math.rint(percent * 100) / 100);
  }
}
