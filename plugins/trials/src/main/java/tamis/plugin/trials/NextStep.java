package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.plugin.trials.NextChange.Step;

/**
 * The one thing to do otherwise: first what goes with the outcome; else what lies furthest outside
 * in trials that went wrong; else what was not read; else what differs most. Where an earlier stage
 * was out as well, that one goes first, since a later one may only follow from it.
 */
final class NextStep {
  /** A weight or a time that is off by less than this part of a width is no matter. */
  private static final double SLIGHT = 0.25;

  private final List<Weighted> ordered;
  private final Causes causes;
  private final List<Unread> unread;
  private final TrialBook book;
  private final boolean someWentWrong;

  NextStep(List<Weighted> ordered, Causes causes, List<Unread> unread, TrialBook book) {
    this.ordered = ordered.stream().filter(one -> !one.measured().effect()).toList();
    this.causes = causes;
    this.unread = unread;
    this.book = book;
    this.someWentWrong = book.count(Outcome.GONE_WRONG) > 0;
  }

  NextChange change() {
    if (!causes.strongest().isEmpty()) {
      Weighted first = causes.strongest().get(0);
      Weighted earliest = earliest(first, causes.strongest());
      return changed(earliest.measured(), "it goes with the outcome" + follows(first, earliest));
    }
    List<Weighted> out =
        ordered.stream().filter(one -> excess(one) > 0).sorted(furthestFirst()).toList();
    if (!out.isEmpty()) {
      Weighted first = out.get(0);
      Weighted earliest =
          earliest(first, out.stream().filter(one -> together(one, first)).toList());
      return changed(earliest.measured(), furthest(first, earliest) + "; " + causes.conclusion());
    }
    return unread.isEmpty() ? apartFromEachOther() : read(unread.get(0));
  }

  private Comparator<Weighted> furthestFirst() {
    return Comparator.comparingDouble((Weighted one) -> -excess(one))
        .thenComparing(TrialOrder.byWeight(book));
  }

  /** How much further out in trials that went wrong than in those that were kept. */
  private double excess(Weighted one) {
    Support support = new Support(one.measured(), book);
    if (one.measured().against() == Against.EACH_OTHER) {
      return 0;
    }
    List<Outcome> bad =
        someWentWrong ? List.of(Outcome.GONE_WRONG) : List.of(Outcome.NOT_JUDGED, Outcome.KEPT);
    double kept = someWentWrong ? support.distance(List.of(Outcome.KEPT)) : 0;
    double excess = support.distance(bad) - kept;
    return one.measured().against() == Against.WINDOW || excess >= SLIGHT ? excess : 0;
  }

  /** Whether both were out in one and the same trial. */
  private static boolean together(Weighted one, Weighted other) {
    return outIn(one).stream().anyMatch(outIn(other)::contains);
  }

  private static Set<String> outIn(Weighted one) {
    Set<String> trials = new TreeSet<>();
    for (Map.Entry<String, Figure> entry : one.measured().figures().entrySet()) {
      if (entry.getValue().out() > 0) {
        trials.add(entry.getKey());
      }
    }
    return trials;
  }

  private Weighted earliest(Weighted first, List<Weighted> among) {
    Weighted earliest = first;
    boolean moved = true;
    while (moved) {
      moved = false;
      Set<String> before = book.before(earliest.measured().key().stage());
      for (Weighted one : among) {
        if (before.contains(one.measured().key().stage())
            && one.measured().against() == Against.WINDOW) {
          earliest = one;
          moved = true;
          break;
        }
      }
    }
    return earliest;
  }

  private static String follows(Weighted first, Weighted earliest) {
    return earliest.equals(first)
        ? ""
        : ", and comes before " + first.measured().key().words() + ", which may follow from it";
  }

  private String furthest(Weighted first, Weighted earliest) {
    List<Outcome> all = List.of(Outcome.values());
    double widths = new Support(earliest.measured(), book).distance(all);
    String limit =
        earliest.measured().against() == Against.WINDOW ? "its window" : "what is written";
    return (earliest.equals(first)
            ? "of all that was read it lies furthest from "
            : "it lies outside of ")
        + limit
        + ": "
        + Words.number(widths)
        + " widths in "
        + String.join(", ", outIn(earliest))
        + follows(first, earliest);
  }

  private NextChange changed(Measured measured, String reason) {
    Measured.Key key = measured.key();
    @Nullable MeasureWindow window = measured.window();
    if (window != null) {
      String words = "Bring the " + key.words() + " to " + window.words(key.unit()) + ".";
      return step(Step.BRING_BACK, words, measured, reason);
    }
    if (measured.against() == Against.AS_WRITTEN) {
      boolean time = key.measure().equals(Readings.DURATION);
      String words =
          time
              ? "Keep `" + key.stage() + "` to the time that is written."
              : "Weigh " + key.of() + " as it is written.";
      return step(Step.BRING_BACK, words, measured, reason);
    }
    return step(Step.AS_KEPT, asKept(measured), measured, reason);
  }

  private String asKept(Measured measured) {
    Support support = new Support(measured, book);
    Measured.Key key = measured.key();
    if (key.measure().equals(Conditions.CHANGE)) {
      boolean bad = support.mean(Outcome.GONE_WRONG) > support.mean(Outcome.KEPT);
      return (bad ? "Make it without this: " : "Do this again: ") + key.of() + ".";
    }
    List<Figure> kept = support.figures(Outcome.KEPT);
    List<String> shown = new ArrayList<>();
    for (Figure figure : kept) {
      String text =
          figure.value() == null
              ? String.valueOf(figure.text())
              : Words.amount(figure.value(), key.unit());
      if (!shown.contains(text)) {
        shown.add(text);
      }
    }
    shown.sort(Comparator.naturalOrder());
    return "Let the " + key.words() + " be as in what was kept: " + String.join(", ", shown) + ".";
  }

  private NextChange step(Step step, String words, Measured measured, String reason) {
    Measured.Key key = measured.key();
    return new NextChange(
        words + " Leave all else as it is.",
        step,
        Comparison.orNull(key.stage()),
        key.measure(),
        Comparison.orNull(key.of()),
        measured.window(),
        reason);
  }

  private NextChange read(Unread first) {
    return new NextChange(
        "Read the "
            + first.measure().replace('-', ' ')
            + " at `"
            + first.stage()
            + "`. Leave all else as it is.",
        Step.READ,
        first.stage(),
        first.measure(),
        null,
        null,
        "nothing that was read lies outside, and this was not read in "
            + String.join(", ", first.trials())
            + "; "
            + causes.conclusion());
  }

  private NextChange apartFromEachOther() {
    if (someWentWrong && book.count(Outcome.KEPT) > 0) {
      for (Weighted one : ordered) {
        boolean apart = one.measured().isDifference(book.trials().size()) && one.distance() > 0;
        if (apart && one.measured().against() == Against.EACH_OTHER && isTold(one)) {
          return changed(
              one.measured(),
              "nothing that was read lies outside, and in this they differ most; "
                  + causes.conclusion());
        }
      }
    }
    return new NextChange(
        "Make it once more the same way, and read every stage.",
        Step.REPEAT,
        null,
        null,
        null,
        null,
        "nothing that was read lies outside or tells the trials apart; " + causes.conclusion());
  }

  private boolean isTold(Weighted one) {
    return !new Support(one.measured(), book).figures(Outcome.KEPT).isEmpty();
  }
}
