package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out one syrup. */
final class SyrupCook {
  private static final double HALF_PERCENT = 0.05;

  private final SugarSyrup.Input input;
  private final Notes notes = new Notes();
  private final Place place;
  private final SyrupPan pan;
  private final SyrupTarget target;
  private final List<String> advice = new ArrayList<>();

  SyrupCook(SugarSyrup.Input input, Kitchen kitchen) {
    this.input = input;
    this.place = Place.of(input.altitude(), input.pressure(), input.boilingWater(), notes);
    this.pan = SyrupPan.of(input, kitchen);
    this.target = new SyrupTarget(pan.solutes(), place, input.authorityOrUsual());
  }

  Answer<SugarSyrup.Result> answer() {
    place.cite(notes, "/waterBoilingCelsius");
    @Nullable Window wanted =
        input.stage() == null ? null : target.reading(input.stage(), notes, "/targetCelsius");
    @Nullable Double percent = percent(wanted);
    @Nullable Double boiling =
        percent == null
            ? null
            : place.reading(pan.solutes().boilingPoint(percent, place.pascals()));
    @Nullable Double seaLevel = seaLevel(percent, wanted);
    SyrupStages.@Nullable Verdict verdict =
        seaLevel == null ? null : SyrupStages.at(input.authorityOrUsual(), seaLevel);
    noteSources(percent);
    @Nullable Double toBoilOff = null;
    @Nullable Double toAdd = null;
    if (percent != null && pan.isWeighed()) {
      double change = pan.syrup(from(percent)) - pan.syrup(to(percent, wanted));
      toBoilOff = Math.max(0, change) + 0.0;
      toAdd = overshoot(percent, wanted) ? Math.max(0, -change) : null;
    }
    advise(percent, wanted, toAdd);
    SugarSyrup.Result result =
        new SugarSyrup.Result(
            boiling,
            range(percent, boiling),
            percent,
            verdict == null ? null : verdict.stage(),
            verdict == null ? List.of() : verdict.between(),
            seaLevel == null ? List.of() : SyrupStages.all(seaLevel),
            seaLevel,
            toBoilOff,
            toAdd,
            pan.solids() == null || percent == null ? null : pan.syrup(to(percent, wanted)),
            wanted,
            lift(wanted),
            place.waterBoils(),
            place.offset(),
            forecast(wanted),
            List.copyOf(advice));
    Cautions.hotSugar(notes, "");
    return Answer.of(result, notes);
  }

  /** Of the syrup that was read or weighed; else of the wanted one; else of what went in. */
  private @Nullable Double percent(@Nullable Window wanted) {
    if (input.weighed() != null) {
      return pan.percentAt(input.weighed().grams());
    }
    if (input.temperature() != null) {
      return percentOfReading(input.temperature().celsius());
    }
    if (wanted != null && (pan.percent() == null || pan.isWeighed())) {
      return target.isSyrup(wanted) ? target.percent(wanted) : null;
    }
    return pan.percent();
  }

  private @Nullable Double percentOfReading(double reading) {
    double celsius = place.truth(reading);
    double water = place.waterBoils();
    if (celsius < water - 0.3) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          "/temperature",
          String.format(
              Locale.ROOT,
              "no syrup boils at %.1f °C here: water alone boils at %.1f °C",
              celsius,
              water));
    }
    if (celsius > pan.solutes().hottest(place.pascals())) {
      if (pan.solids() != null || pan.percent() != null) {
        pan.solutes().checkRange(celsius, place.pascals(), "/temperature");
      }
      return null;
    }
    double percent = pan.solutes().percent(celsius, place.pascals());
    if (pan.percent() != null && percent < pan.percent() - HALF_PERCENT) {
      notes.remark(
          "not-boiling-yet",
          "/temperature",
          String.format(
              Locale.ROOT,
              "this syrup begins to boil at %.1f °C here; at %.1f °C nothing has boiled off yet",
              pan.solutes().boilingPoint(pan.percent(), place.pascals()),
              celsius));
      return pan.percent();
    }
    return percent;
  }

  private @Nullable Double seaLevel(@Nullable Double percent, @Nullable Window wanted) {
    if (percent != null) {
      return pan.solutes().boilingPoint(percent, WaterVapour.SEA_LEVEL_PASCALS);
    }
    if (input.temperature() != null) {
      return target.seaLevel(place.truth(input.temperature().celsius()));
    }
    return wanted == null ? null : target.seaLevel(target.middle(wanted));
  }

  /** Where boiling off begins: the reading if a stage is wanted from it, else what went in. */
  private double from(double percent) {
    boolean onTheWay =
        input.stage() != null && (input.temperature() != null || input.weighed() != null);
    return onTheWay || pan.percent() == null ? percent : pan.percent();
  }

  private double to(double percent, @Nullable Window wanted) {
    if (wanted == null || !(input.temperature() != null || input.weighed() != null)) {
      return percent;
    }
    return target.percent(wanted);
  }

  private boolean overshoot(double percent, @Nullable Window wanted) {
    return wanted != null
        && (input.temperature() != null || input.weighed() != null)
        && pan.solutes().boilingPoint(percent, place.pascals()) > place.truth(wanted.high()) + 0.01;
  }

  private @Nullable Window range(@Nullable Double percent, @Nullable Double boiling) {
    if (percent == null || boiling == null || !pan.solutes().isSucrose()) {
      return null;
    }
    @Nullable Double older = BoilingElevation.at(percent, notes, "/boilingRange");
    if (older == null) {
      return null;
    }
    double byTable = place.reading(place.waterBoils() + older);
    return new Window(Math.min(boiling, byTable), Math.max(boiling, byTable));
  }

  private @Nullable Window lift(@Nullable Window wanted) {
    if (wanted == null || input.carryOver() == null) {
      return null;
    }
    double early = input.carryOver().kelvins();
    return new Window(wanted.low() - early, wanted.high() - early);
  }

  private @Nullable Forecast forecast(@Nullable Window wanted) {
    if (input.readings().isEmpty()) {
      return null;
    }
    double goal =
        wanted != null
            ? place.truth(wanted.low())
            : input.temperature() == null ? 0 : place.truth(input.temperature().celsius());
    return SyrupForecast.of(pan, place, input.readings(), goal, notes);
  }

  private void advise(@Nullable Double percent, @Nullable Window wanted, @Nullable Double toAdd) {
    if (wanted != null && !target.isSyrup(wanted)) {
      notes.remark(
          "no-syrup-any-more",
          "/stage",
          "at "
              + input.stage()
              + " the water is gone and sugar melts and browns: go by the temperature, which is the same at"
              + " every height, and by the colour; no boiling point and no part of sugar is told");
    }
    if (wanted != null) {
      advice.add(
          String.format(
              Locale.ROOT,
              "%s here is %.1f °C to %.1f °C on this thermometer",
              input.stage(),
              wanted.low(),
              wanted.high()));
      if (input.carryOver() == null) {
        advice.add("lift it off one or two degrees early: the heat of the pan carries it on");
      }
    }
    if (percent != null && overshoot(percent, wanted)) {
      advice.add(
          toAdd == null
              ? "cooked too far: take it off, stir in hot water a spoon at a time and cook up again"
              : String.format(
                  Locale.ROOT,
                  "cooked too far: take it off, stir in %.0f g of hot water and cook up again",
                  toAdd));
    }
  }

  private void noteSources(@Nullable Double percent) {
    if (percent != null) {
      Equation.SUCROSE_ACTIVITY.cite(notes, "/sugarPercent");
    }
    if (!pan.solutes().isSucrose()) {
      notes.estimate(
          "mixed-sugars",
          "/with",
          "other sugars are counted by their molecules; no published table of their boiling points"
              + " is known, so test a drop in cold water");
    }
  }
}
