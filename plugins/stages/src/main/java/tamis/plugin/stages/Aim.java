package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ThermalWindow;
import tamis.engine.quantity.Temperature;
import tamis.engine.table.Row;

/**
 * What a stage aims at, read from its target.
 *
 * @param low lowest reading inside as written, in the unit of the measure; null if there is none
 * @param high highest reading inside as written; null if there is none
 * @param row of the table it was taken from, or null if the target told it
 */
record Aim(
    StageTarget.@Nullable Kind kind,
    Measure measure,
    @Nullable Double low,
    @Nullable Double high,
    @Nullable Double surroundings,
    @Nullable Row row) {

  static Aim of(StageTarget target, @Nullable String use, String pointer) {
    if (target.low() == null && target.high() == null) {
      if (target.kind() == null) {
        throw Refusal.of(
            FaultCode.MISSING, pointer + "/low", "the target needs low or high, or a kind");
      }
      Row row = StageWindows.row(target.kind(), use);
      return new Aim(
          target.kind(),
          StageWindows.measure(row),
          row.number("low"),
          row.number("high"),
          surroundings(target, pointer),
          row);
    }
    Measure measure = target.measure() == null ? Measure.TEMPERATURE : target.measure();
    Faults faults = new Faults();
    @Nullable Double low = faults.gather(pointer + "/low", () -> read(target.low(), measure));
    @Nullable Double high = faults.gather(pointer + "/high", () -> read(target.high(), measure));
    faults.refuseIfAny();
    if (low != null && high != null && low > high) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          pointer + "/low",
          "low is above high: " + target.low() + ", " + target.high());
    }
    Aim aim = new Aim(target.kind(), measure, low, high, surroundings(target, pointer), null);
    aim.checkSurroundings(pointer);
    return aim;
  }

  /** A window that an ingredient's own document tells; a shop's document replaces ours. */
  static Aim of(Ingredient ingredient, String window) {
    List<String> known = new ArrayList<>();
    for (ThermalWindow own : ingredient.windows()) {
      if (own.window().equals(window)) {
        return new Aim(
            null, Measure.TEMPERATURE, own.low().celsius(), own.high().celsius(), null, null);
      }
      known.add(own.window());
    }
    throw Refusal.of(
        FaultCode.NO_SUCH_VALUE,
        "/window",
        ingredient.id()
            + " has no window `"
            + window
            + "`"
            + (known.isEmpty() ? "" : "; it has " + String.join(", ", known)));
  }

  boolean isSyrup() {
    return kind == StageTarget.Kind.SUGAR_SYRUP && measure == Measure.TEMPERATURE;
  }

  /** The middle of the window, or its one end. */
  double middle() {
    if (low == null) {
      return high == null ? 0 : high;
    }
    return high == null ? low : (low + high) / 2;
  }

  private void checkSurroundings(String pointer) {
    if (surroundings == null || kind == null) {
      return;
    }
    boolean tooWarm = kind == StageTarget.Kind.COOLING && high != null && high <= surroundings;
    boolean tooCold = kind == StageTarget.Kind.HEATING && low != null && low >= surroundings;
    if (tooWarm || tooCold) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          pointer + "/surroundings",
          "nothing "
              + (tooWarm ? "cools below" : "warms above")
              + " what surrounds it: "
              + surroundings
              + " °C");
    }
  }

  private static @Nullable Double surroundings(StageTarget target, String pointer) {
    String text = target.surroundings();
    if (text == null) {
      return null;
    }
    try {
      return Temperature.parse(text).celsius();
    } catch (Refusal refusal) {
      throw refusal.under(pointer + "/surroundings");
    }
  }

  private static @Nullable Double read(@Nullable String text, Measure measure) {
    return text == null ? null : Watched.parse(text).as(measure);
  }
}
