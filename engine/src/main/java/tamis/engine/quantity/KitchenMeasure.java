package tamis.engine.quantity;

import java.util.List;

/** Writes volumes and masses in the spoons, cups and ounces of a US kitchen. */
public final class KitchenMeasure {
  private static final List<String> EIGHTHS =
      List.of("", "1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8");

  private KitchenMeasure() {}

  /** A volume in cups, tablespoons or teaspoons, to the eighth that the measure is sold in. */
  public static String cupsAndSpoons(double millilitres) {
    double cups = millilitres / factor("cup");
    if (cups >= 0.24) {
      return eighths(Math.rint(cups * 4) * 2, "cup");
    }
    double spoons = millilitres / factor("tbsp");
    if (spoons >= 0.95) {
      return eighths(Math.rint(spoons * 2) * 4, "tbsp");
    }
    return eighths(Math.max(1, Math.rint(millilitres / factor("tsp") * 8)), "tsp");
  }

  /** A mass in ounces, or in pounds and ounces. */
  public static String poundsAndOunces(double grams) {
    double ounces = grams / factor("oz");
    if (ounces < 16) {
      return eighths(Math.max(1, Math.rint(ounces * 8)), "oz");
    }
    long whole = (long) (ounces / 16);
    double rest = Math.rint((ounces - whole * 16) * 2) * 4;
    if (rest >= 128) {
      return (whole + 1) + " lb";
    }
    return rest == 0 ? whole + " lb" : whole + " lb " + eighths(rest, "oz");
  }

  private static String eighths(double eighths, String unit) {
    long whole = (long) eighths / 8;
    String part = EIGHTHS.get((int) ((long) eighths % 8));
    String number = whole == 0 ? part : (part.isEmpty() ? "" + whole : whole + " " + part);
    return number + " " + unit;
  }

  private static double factor(String unit) {
    return Units.standard().unit(unit, Measures.US).factor();
  }
}
