package tamis.plugin.trials;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The figures of a measure in words, by outcome. */
record Support(Measured measured, TrialBook book) {

  /** What would be the cause: {@code temperature at `temper` below its window}. */
  String cause() {
    Measured.Key key = measured.key();
    List<Figure> wrong = figures(Outcome.GONE_WRONG);
    if (measured.against() == Against.EACH_OTHER) {
      return key.measure().equals(Conditions.CHANGE)
          ? (mean(Outcome.GONE_WRONG) > mean(Outcome.KEPT) ? "tried: " : "not tried: ") + key.of()
          : key.words();
    }
    long below = wrong.stream().filter(f -> f.deviation() != null && f.deviation() < 0).count();
    long above = wrong.stream().filter(f -> f.deviation() != null && f.deviation() > 0).count();
    String what = measured.against() == Against.WINDOW ? "its window" : "what is written";
    if (below == 0 || above == 0) {
      return key.words() + (below == 0 ? " above " : " below ") + what;
    }
    return key.words() + " off " + what + ", " + below + " below and " + above + " above";
  }

  String words() {
    return "kept: " + side(Outcome.KEPT) + "; gone wrong: " + side(Outcome.GONE_WRONG);
  }

  private String side(Outcome outcome) {
    List<Figure> figures = figures(outcome);
    if (measured.key().measure().equals(Conditions.CHANGE)) {
      long tried =
          figures.stream().filter(figure -> Double.valueOf(1).equals(figure.value())).count();
      return "tried in " + tried + " of " + figures.size();
    }
    if (!measured.isNumeric()) {
      return String.join(
          ", ", figures.stream().map(f -> String.valueOf(f.text())).sorted().distinct().toList());
    }
    double low = figures.stream().mapToDouble(Support::plain).min().orElse(0);
    double high = figures.stream().mapToDouble(Support::plain).max().orElse(0);
    String unit = measured.key().unit();
    String range =
        low == high
            ? Words.amount(low, unit)
            : Words.number(low) + " to " + Words.amount(high, unit);
    @Nullable MeasureWindow window = measured.window();
    if (window == null) {
      return range + " in " + Words.many(figures.size(), "trial");
    }
    long out = figures.stream().filter(figure -> figure.out() > 0).count();
    return range + ", " + out + " of " + figures.size() + " outside " + window.words(unit);
  }

  double mean(Outcome outcome) {
    return figures(outcome).stream().mapToDouble(Support::plain).average().orElse(0);
  }

  List<Figure> figures(Outcome outcome) {
    return measured.figures().entrySet().stream()
        .filter(one -> book.outcome(one.getKey()) == outcome)
        .map(Map.Entry::getValue)
        .toList();
  }

  /** The furthest out among trials of these outcomes, in widths. */
  double distance(List<Outcome> outcomes) {
    return outcomes.stream()
        .flatMap(outcome -> figures(outcome).stream())
        .mapToDouble(figure -> figure.out() / measured.width())
        .max()
        .orElse(0);
  }

  private static double plain(Figure figure) {
    return figure.value() == null ? 0 : figure.value();
  }
}
