package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/**
 * A stage that is known at sea level, as this thermometer shows it here: the syrup with the same
 * part of sugar. Where sugar melts and browns the temperature itself counts.
 */
final class SyrupTarget {
  private final Solutes solutes;
  private final Place place;
  private final StageAuthority authority;

  SyrupTarget(Solutes solutes, Place place, StageAuthority authority) {
    this.solutes = solutes;
    this.place = place;
    this.authority = authority;
  }

  Window reading(SyrupStage stage, Notes notes, String pointer) {
    @Nullable Row row = SyrupStages.row(authority, stage);
    if (row == null) {
      throw Refusal.of(
          FaultCode.NO_SUCH_VALUE,
          "/stage",
          "the table of " + authority + " has no stage " + stage);
    }
    notes.cite(row, pointer);
    return reading(new Window(row.number("low_c"), row.number("high_c")));
  }

  /** What the thermometer shows here of a window that is told for sea level. */
  Window reading(Window seaLevel) {
    return new Window(place.reading(here(seaLevel.low())), place.reading(here(seaLevel.high())));
  }

  /** The part of sugar in the middle of what the thermometer shows. */
  double percent(Window reading) {
    return Math.min(Solutes.MOST_PERCENT, solutes.percent(middle(reading), place.pascals()));
  }

  /** Whether it is a syrup that boils there; above, sugar melts and browns. */
  boolean isSyrup(Window reading) {
    return middle(reading) <= solutes.hottest(place.pascals());
  }

  /** The true temperature in the middle of what the thermometer shows. */
  double middle(Window reading) {
    return place.truth((reading.low() + reading.high()) / 2);
  }

  private double here(double seaLevel) {
    double hottest = solutes.hottest(WaterVapour.SEA_LEVEL_PASCALS);
    if (seaLevel >= CARAMEL) {
      return seaLevel;
    }
    if (seaLevel > hottest) {
      return seaLevel - shift();
    }
    double percent = solutes.percent(seaLevel, WaterVapour.SEA_LEVEL_PASCALS);
    return solutes.boilingPoint(percent, place.pascals());
  }

  /** The temperature at sea level of a syrup too thick for the equation. */
  double seaLevel(double celsius) {
    return celsius >= CARAMEL ? celsius : Math.min(celsius + Math.max(0, shift()), CARAMEL - 0.1);
  }

  private double shift() {
    return solutes.hottest(WaterVapour.SEA_LEVEL_PASCALS) - solutes.hottest(place.pascals());
  }

  /** From here on sugar melts and browns, whatever the air weighs. */
  private static final double CARAMEL = 160;
}
