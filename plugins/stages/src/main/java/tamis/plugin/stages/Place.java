package tamis.plugin.stages;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Pressure;
import tamis.engine.quantity.Temperature;

/**
 * Where it is cooked, and by which thermometer. The height or the measured pressure says where
 * water boils. If the cook's own thermometer was held into boiling water too, what it is off by is
 * told apart from the height; if only that reading is known, the thermometer is taken to be right.
 *
 * @param pascals pressure of the air
 * @param offset what the thermometer shows too much, in K
 */
record Place(double pascals, double offset) {
  static final Place SEA_LEVEL = new Place(WaterVapour.SEA_LEVEL_PASCALS, 0);

  /** Beyond this a thermometer is broken, or the height is wrong. */
  private static final double LARGEST_OFFSET = 12;

  private static final double NOTABLE_OFFSET = 0.75;

  /**
   * Parts of a degree that equations are solved to; 115 °C comes back as 115 and not a bit less.
   */
  private static final double FINEST = 1e9;

  static void check(
      @Nullable Length altitude,
      @Nullable Pressure pressure,
      @Nullable Temperature boilingWater,
      Faults faults) {
    if (altitude != null && pressure != null) {
      faults.add(
          FaultCode.EXACTLY_ONE,
          "/pressure",
          "give altitude or pressure, not both: each says where water boils");
    }
    if (boilingWater != null && (altitude != null || pressure != null)) {
      double boils = WaterVapour.boilingPoint(pascals(altitude, pressure));
      if (Math.abs(boilingWater.celsius() - boils) > LARGEST_OFFSET) {
        faults.add(
            new Fault(
                FaultCode.INCONSISTENT,
                "/boilingWater",
                boilingWater.toString(),
                "near " + shown(boils) + " °C",
                "water boils at "
                    + shown(boils)
                    + " °C here; a thermometer that shows "
                    + boilingWater
                    + " in it cannot be used"));
      }
    }
  }

  static Place of(
      @Nullable Length altitude,
      @Nullable Pressure pressure,
      @Nullable Temperature boilingWater,
      Notes notes) {
    if (boilingWater == null) {
      if (altitude == null && pressure == null) {
        notes.remark(
            "sea-level-assumed", "", "no altitude or pressure was given; taken at sea level");
      }
      return new Place(pascals(altitude, pressure), 0);
    }
    if (altitude == null && pressure == null) {
      notes.remark(
          "thermometer-taken-as-right",
          "/boilingWater",
          "only the reading in boiling water is known: it is taken as the height of the place; give"
              + " the altitude too, and what the thermometer is off by is told apart");
      return new Place(WaterVapour.pressure(boilingWater.celsius()), 0);
    }
    double pascals = pascals(altitude, pressure);
    double offset = boilingWater.celsius() - WaterVapour.boilingPoint(pascals);
    if (Math.abs(offset) >= NOTABLE_OFFSET) {
      notes.remark(
          "thermometer-off",
          "/boilingWater",
          String.format(
              Locale.ROOT,
              "the thermometer shows %.1f °C too %s in boiling water; readings and targets are corrected by that",
              Math.abs(offset),
              offset > 0 ? "much" : "little"));
    }
    return new Place(pascals, offset);
  }

  private static double pascals(@Nullable Length altitude, @Nullable Pressure pressure) {
    if (pressure != null) {
      return pressure.pascals();
    }
    return altitude == null
        ? WaterVapour.SEA_LEVEL_PASCALS
        : WaterVapour.atmosphere(altitude.metres());
  }

  double waterBoils() {
    return WaterVapour.boilingPoint(pascals);
  }

  /** The true temperature behind a reading. */
  double truth(double reading) {
    return reading - offset;
  }

  /** What the thermometer shows at a true temperature, without the last bits of an equation. */
  double reading(double truth) {
    return Math.rint((truth + offset) * FINEST) / FINEST;
  }

  void cite(Notes notes, String pointer) {
    Equation.WATER_BOILING.cite(notes, pointer);
    Equation.AIR_PRESSURE.cite(notes, pointer);
  }

  private static String shown(double celsius) {
    return String.format(Locale.ROOT, "%.1f", celsius);
  }
}
