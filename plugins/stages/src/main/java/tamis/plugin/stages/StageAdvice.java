package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.quantity.Spread;

/** What to do at a stage, gentlest first, with figures where what is in the bowl is known. */
final class StageAdvice {
  /** Warm enough to soften fat, cool enough to keep the rest of the foam. */
  private static final double WARM_PORTION = 35;

  private static final double CHILLED_PORTION = 10;

  private final StageCheck.Input input;
  private final Aim aim;
  private final Place place;
  private final @Nullable StageBill bill;

  StageAdvice(StageCheck.Input input, Aim aim, Place place, @Nullable StageBill bill) {
    this.input = input;
    this.aim = aim;
    this.place = place;
    this.bill = bill;
  }

  /** Figures of the way from a reading to the middle of the window; only for temperatures. */
  StageCheck.@Nullable Rescue rescue(double reading, double middle) {
    if (aim.measure() != Measure.TEMPERATURE || aim.isSyrup()) {
      return null;
    }
    double from = place.truth(reading);
    double to = place.truth(middle);
    @Nullable Double portionAt = portionAt(from, to);
    if (bill == null || Math.min(from, to) < -40 || Math.max(from, to) > 150) {
      @Nullable Double portion = portionAt == null ? null : (to - from) / (portionAt - from);
      return new StageCheck.Rescue(to, null, null, portion, portionAt, null, null);
    }
    Recovery recovery = new Recovery(bill.made(), bill.kilograms(), from, to);
    @Nullable Double efficiency = input.efficiency() == null ? null : input.efficiency().value();
    @Nullable Spread minutes =
        input.power() == null || to < from
            ? null
            : recovery.minutes(input.power().watts(), efficiency);
    @Nullable Spread ice = recovery.iceBathMinutes();
    @Nullable Spread cold = recovery.refrigeratorMinutes();
    return new StageCheck.Rescue(
        to,
        recovery.kilojoules().typical(),
        minutes == null ? null : minutes.typical(),
        portionAt == null ? null : recovery.portion(portionAt),
        portionAt,
        ice == null ? null : ice.typical(),
        cold == null ? null : cold.typical());
  }

  private static @Nullable Double portionAt(double from, double to) {
    if (to > from) {
      return to < WARM_PORTION - 1 ? WARM_PORTION : null;
    }
    return to > CHILLED_PORTION + 1 && from < 60 ? CHILLED_PORTION : null;
  }

  List<String> lines(
      StageCheck.Verdict verdict,
      double reading,
      double middle,
      @Nullable Forecast forecast,
      StageCheck.@Nullable Rescue rescue) {
    List<String> lines = new ArrayList<>();
    if (forecast != null) {
      lines.add(
          String.format(
              Locale.ROOT,
              "wait: it comes into the window at about minute %.1f, between %.1f and %.1f; read again"
                  + " before",
              forecast.minute(),
              forecast.low(),
              forecast.high()));
    }
    if (aim.isSyrup()) {
      syrup(verdict, reading, middle, lines);
    } else if (aim.measure() == Measure.TEMPERATURE) {
      temperature(verdict, rescue, lines);
    } else {
      lines.add(other(verdict, reading, middle));
    }
    return lines;
  }

  private void syrup(
      StageCheck.Verdict verdict, double reading, double middle, List<String> lines) {
    switch (verdict) {
      case BELOW -> lines.add("keep boiling; lift it off a degree early for what the pan adds");
      case WITHIN -> {
        lines.add("lift it off now; set the pan into cold water for a moment to hold it");
        lines.add("use it at once, while its temperature lies in the window");
      }
      case ABOVE -> {
        double now = water(place.truth(reading));
        double wanted = water(place.truth(middle));
        lines.add(
            String.format(
                Locale.ROOT,
                "cooked too far: take it off the heat, stir in %.0f g of hot water for 100 g of"
                    + " sugar and cook up again",
                Math.max(0, (wanted - now) * 100)));
      }
    }
  }

  private double water(double celsius) {
    double percent = Math.max(1, Solutes.SUCROSE.percent(celsius, place.pascals()));
    return (100 - percent) / percent;
  }

  private static void temperature(
      StageCheck.Verdict verdict, StageCheck.@Nullable Rescue rescue, List<String> lines) {
    if (verdict == StageCheck.Verdict.WITHIN || rescue == null) {
      lines.add("inside the window: go on now");
      return;
    }
    boolean cold = verdict == StageCheck.Verdict.BELOW;
    if (rescue.portion() != null && rescue.portionAtCelsius() != null && rescue.portion() < 0.5) {
      lines.add(
          String.format(
              Locale.ROOT,
              "%s %.0f %% of it to %.0f °C and stir it back",
              cold ? "warm" : "chill",
              rescue.portion() * 100,
              rescue.portionAtCelsius()));
    }
    String heat =
        rescue.kilojoules() == null
            ? ""
            : String.format(Locale.ROOT, ", %.1f kJ", Math.abs(rescue.kilojoules()));
    if (cold) {
      String minutes =
          rescue.minutes() == null
              ? ""
              : String.format(Locale.ROOT, ", about %.1f min at that power", rescue.minutes());
      lines.add(
          String.format(
              Locale.ROOT, "or warm it to %.1f °C%s%s", rescue.toCelsius(), heat, minutes));
      return;
    }
    lines.add(String.format(Locale.ROOT, "or cool it to %.1f °C%s", rescue.toCelsius(), heat));
    if (rescue.iceBathMinutes() != null && rescue.refrigeratorMinutes() != null) {
      lines.add(
          String.format(
              Locale.ROOT,
              "that is about %.1f min stirred in an ice bath or %.0f min in the refrigerator",
              rescue.iceBathMinutes(),
              rescue.refrigeratorMinutes()));
    }
  }

  private String other(StageCheck.Verdict verdict, double reading, double middle) {
    if (verdict == StageCheck.Verdict.WITHIN) {
      return "inside the window: go on now";
    }
    boolean low = verdict == StageCheck.Verdict.BELOW;
    return switch (aim.measure()) {
      case BRIX -> low ? "boil off more water" : "stir in hot water a spoon at a time";
      case MASS ->
          low
              ? String.format(Locale.ROOT, "boiled too far: add %.1f g of water", middle - reading)
              : String.format(Locale.ROOT, "%.1f g are still to boil off", reading - middle);
      case SPECIFIC_GRAVITY -> low ? "too much air: fold it down gently" : "beat in more air";
      case PH -> low ? "too sour: thin it with more of the mix" : "more acid, or a longer ferment";
      case VOLUME_INCREASE -> low ? "let it rise on" : "risen too far: knock back, or bake at once";
      case TEMPERATURE -> "bring it to the window";
    };
  }
}
