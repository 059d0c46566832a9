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
      return eighths(Math.round(cups * 4) * 2, "cup");
    }
    double spoons = millilitres / factor("tbsp");
    if (spoons >= 0.95) {
      return eighths(Math.round(spoons * 2) * 4, "tbsp");
    }
    return little(millilitres / factor("tsp"), "tsp");
  }

  /** A mass in ounces, or in pounds and ounces. */
  public static String poundsAndOunces(double grams) {
    double ounces = grams / factor("oz");
    if (Math.round(ounces * 8) < 16 * 8) {
      return little(ounces, "oz");
    }
    long halves = Math.round(ounces * 2);
    long pounds = halves / 32;
    long rest = halves % 32 * 4;
    return rest == 0 ? pounds + " lb" : pounds + " lb " + eighths(rest, "oz");
  }

  private static String little(double amount, String unit) {
    long eighths = Math.round(amount * 8);
    return eighths == 0 && amount > 0 ? "less than 1/8 " + unit : eighths(eighths, unit);
  }

  private static String eighths(long eighths, String unit) {
    long whole = eighths / 8;
    String part = EIGHTHS.get((int) (eighths % 8));
    String space = whole > 0 && !part.isEmpty() ? " " : "";
    return (whole > 0 || part.isEmpty() ? "" + whole : "") + space + part + " " + unit;
  }

  private static double factor(String unit) {
    return Units.standard().unit(unit, Measures.US).factor();
  }
}
