package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.StageTarget.Measure;
import tamis.engine.note.Notes;

/**
 * When a series of readings gets to a goal: temperatures after Newton where the surroundings are
 * known or four readings let them be found, everything else along a line.
 */
final class Series {
  private static final double TOO_SCATTERED = 3;
  private static final double LONGEST_MINUTES = 10_000;
  private static final int READINGS_FOR_SURROUNDINGS = 4;

  private final double[] minutes;
  private final double[] values;
  private final double[] sureness;
  private final Measure measure;
  private final Notes notes;

  Series(double[] minutes, double[] values, Measure measure, Notes notes) {
    this.minutes = minutes;
    this.values = values;
    this.measure = measure;
    this.notes = notes;
    this.sureness = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      sureness[i] = sure(values[i]);
    }
  }

  @Nullable Forecast reaches(double goal, @Nullable Double surroundings) {
    if (values.length < 2) {
      notes.remark(
          "one-reading",
          "/readings",
          "one reading tells where it is, not where it goes; read again in a minute or two");
      return null;
    }
    List<Fitted> fits = new ArrayList<>();
    if (measure == Measure.TEMPERATURE) {
      fits.addAll(newton(surroundings));
    }
    if (surroundings == null || measure != Measure.TEMPERATURE) {
      fits.add(new Fitted(line(), "a steady rate"));
    }
    for (Fitted fitted : fits) {
      Fit fit = fitted.fit();
      if (fit == null) {
        continue;
      }
      double last = minutes[minutes.length - 1];
      Fit.@Nullable Moment moment = fit.reaches(goal, last, last + LONGEST_MINUTES);
      if (moment != null) {
        scatter(fit, fitted.basis());
        return Forecast.of(moment, fitted.basis());
      }
    }
    notes.remark(
        "not-getting-there", "/readings", "by these readings it does not get into the window");
    return null;
  }

  private record Fitted(@Nullable Fit fit, String basis) {}

  private List<Fitted> newton(@Nullable Double surroundings) {
    int last = values.length - 1;
    double span = Math.max(1e-3, minutes[last] - minutes[0]);
    if (surroundings != null) {
      double ratio = (values[last] - surroundings) / (values[0] - surroundings);
      double k = ratio > 0 ? Math.max(1e-6, -Math.log(ratio) / span) : 0.01;
      Fit.Curve curve =
          (minute, p) -> surroundings + (p[0] - surroundings) * Math.exp(-p[1] * minute);
      return List.of(
          new Fitted(
              Fit.of(
                  curve,
                  minutes,
                  values,
                  sureness,
                  new double[] {
                    surroundings + (values[0] - surroundings) * Math.exp(k * minutes[0]), k
                  }),
              "Newton's cooling towards the surroundings"));
    }
    if (values.length < READINGS_FOR_SURROUNDINGS) {
      return List.of();
    }
    double fall = values[last] - values[0];
    Fit.Curve curve = (minute, p) -> p[0] + (p[1] - p[0]) * Math.exp(-p[2] * minute);
    return List.of(
        new Fitted(
            Fit.of(
                curve,
                minutes,
                values,
                sureness,
                new double[] {values[last] + fall, values[0], 1 / span}),
            "Newton's cooling towards surroundings found from the readings"));
  }

  private @Nullable Fit line() {
    int last = values.length - 1;
    double slope = (values[last] - values[0]) / (minutes[last] - minutes[0]);
    return Fit.of(
        (minute, p) -> p[0] + p[1] * minute,
        minutes,
        values,
        sureness,
        new double[] {values[0] - slope * minutes[0], slope});
  }

  private void scatter(Fit fit, String basis) {
    if (fit.scatter() > TOO_SCATTERED) {
      notes.remark(
          "readings-do-not-fit",
          "/readings",
          String.format(
              Locale.ROOT,
              "the readings do not follow %s: they miss it by %.0f times what an instrument does;"
                  + " the forecast is wide for that",
              basis,
              fit.scatter()));
    }
  }

  /** How sure a reading of this kind is. */
  private double sure(double value) {
    return switch (measure) {
      case TEMPERATURE -> 0.5;
      case BRIX -> 0.3;
      case PH -> 0.05;
      case SPECIFIC_GRAVITY -> 0.01;
      case VOLUME_INCREASE -> 5;
      case MASS -> Math.max(0.5, value * 0.005);
    };
  }
}
