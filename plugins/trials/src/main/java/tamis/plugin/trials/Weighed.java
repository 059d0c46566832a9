package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Actual;
import tamis.engine.trial.Trial;

/** What was really weighed against the bill of the batch, in percent off, and the lots used. */
final class Weighed {
  static final String WEIGHED = "weighed";
  static final String LOT = "lot";
  private static final String AT = "/trials";

  private final TrialBook book;
  private final Kitchen kitchen;
  private final Notes notes;
  private final Map<Measured.Key, Map<String, Figure>> found = new TreeMap<>(TrialOrder.BY_WORDS);

  Weighed(TrialBook book, Kitchen kitchen, Notes notes) {
    this.book = book;
    this.kitchen = kitchen;
    this.notes = notes;
    book.trials().forEach(this::gather);
  }

  List<Measured> measures() {
    List<Measured> measures = new ArrayList<>();
    found.forEach((key, figures) -> measures.add(measured(key, figures)));
    return measures;
  }

  private static Measured measured(Measured.Key key, Map<String, Figure> figures) {
    if (key.measure().equals(LOT)) {
      return Measured.loose(key, figures);
    }
    Scale scale = Scale.of(WEIGHED);
    return new Measured(key, Against.AS_WRITTEN, null, scale.width(0), scale, false, figures);
  }

  private void gather(Trial trial) {
    if (trial.actuals().isEmpty()) {
      return;
    }
    Batch batch;
    try {
      batch = kitchen.batch(trial.formula(), trial.to());
    } catch (Refusal refusal) {
      unknown(trial, "what was weighed is not compared: " + refusal.getMessage());
      return;
    }
    pinsAreCurrent(trial);
    for (Actual actual : trial.actuals()) {
      gather(trial, actual, batch);
    }
  }

  /** Only what is looked up inside a sub-formula could differ. */
  private void pinsAreCurrent(Trial trial) {
    boolean inside = trial.actuals().stream().anyMatch(a -> a.path().lastIndexOf("/lines/") > 0);
    if (inside && !trial.pins().isEmpty()) {
      notes.remark(
          "parts-as-now",
          AT,
          "trial `"
              + trial.id()
              + "`: what was weighed inside a part is held against that part as it is now");
    }
  }

  private void gather(Trial trial, Actual actual, Batch batch) {
    for (Batch.BatchLine line : batch.lines()) {
      if (line.path().equals(actual.path())) {
        String stage = line.line().stage() == null ? "" : line.line().stage();
        String what = named(line, batch);
        lot(trial, stage, what, actual);
        if (line.isAsNeeded()) {
          return;
        }
        Weighing weighing =
            new Weighing(book.formula(trial).measuresOrUs(), AT, "/differences", notes);
        try {
          double grams =
              weighing.grams(actual.quantity(), line.ingredient(), line.line().state()).typical();
          put(trial, stage, what, grams, line.grams().typical());
        } catch (Refusal refusal) {
          unknown(trial, "`" + actual.quantity() + "` of " + what + ": " + refusal.getMessage());
        }
        return;
      }
    }
    Batch.@Nullable Part part = part(batch.root(), actual.path());
    if (part == null) {
      unknown(trial, "there is no line " + actual.path() + " in " + trial.formula());
      return;
    }
    String what = part.formula().name();
    lot(trial, "", what, actual);
    try {
      double grams = Mass.parse(actual.quantity().text()).grams();
      put(trial, "", what, grams, part.finished().typical());
    } catch (Refusal refusal) {
      unknown(trial, "`" + actual.quantity() + "` of " + what + ": " + refusal.getMessage());
    }
  }

  private static Batch.@Nullable Part part(Batch.Part within, String path) {
    for (Batch.Part part : within.parts()) {
      Batch.@Nullable Part found = part.path().equals(path) ? part : part(part, path);
      if (found != null) {
        return found;
      }
    }
    return null;
  }

  /** Two lines of one ingredient in one stage are told apart by their place. */
  private static String named(Batch.BatchLine line, Batch batch) {
    String id = line.ingredient().id();
    boolean alone =
        batch.lines().stream()
                .filter(one -> one.ingredient().id().equals(id))
                .filter(one -> Objects.equals(one.line().stage(), line.line().stage()))
                .limit(2)
                .count()
            == 1;
    return alone ? id : id + " " + line.path();
  }

  private void put(Trial trial, String stage, String what, double grams, double bill) {
    if (bill <= 0) {
      unknown(trial, "the formula weighs no " + what);
      return;
    }
    double off = (grams / bill - 1) * 100;
    String text = Words.amount(grams, "g") + " of " + Words.amount(bill, "g");
    key(WEIGHED, stage, what, "%").put(trial.id(), Figure.of(off, off, text));
  }

  private void lot(Trial trial, String stage, String what, Actual actual) {
    if (actual.lot() != null) {
      key(LOT, stage, what, "").put(trial.id(), Figure.words(actual.lot()));
    }
  }

  private Map<String, Figure> key(String measure, String stage, String what, String unit) {
    Measured.Key key = new Measured.Key(stage, measure, what, unit);
    return found.computeIfAbsent(key, k -> new TreeMap<>());
  }

  private void unknown(Trial trial, String why) {
    notes.remark("weight-not-known", AT, "trial `" + trial.id() + "`: " + why);
  }
}
