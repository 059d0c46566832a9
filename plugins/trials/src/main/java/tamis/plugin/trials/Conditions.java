package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Temperature;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Trial;

/** What each trial was made under: revision, size, temperatures, and what was tried. */
final class Conditions {
  static final String CHANGE = "change";
  static final String REVISION = "revision";
  static final String BATCH = "batch";

  private final TrialBook book;
  private final Kitchen kitchen;
  private final Notes notes;

  Conditions(TrialBook book, Kitchen kitchen, Notes notes) {
    this.book = book;
    this.kitchen = kitchen;
    this.notes = notes;
  }

  List<Measured> measures() {
    Map<String, Figure> revisions = new TreeMap<>();
    Map<String, Figure> batches = new TreeMap<>();
    Map<String, Figure> rooms = new TreeMap<>();
    Map<String, Figure> flours = new TreeMap<>();
    for (Trial trial : book.trials()) {
      Integer revision = trial.formula().revision();
      if (revision != null) {
        revisions.put(trial.id(), Figure.of(revision));
      }
      size(trial, batches);
      temperature(trial, trial.roomTemperature(), rooms);
      temperature(trial, trial.flourTemperature(), flours);
    }
    List<Measured> measures = new ArrayList<>();
    add(measures, REVISION, "", revisions);
    measures.addAll(partsMade());
    add(measures, BATCH, "×", batches);
    add(measures, "room-temperature", "°C", rooms);
    add(measures, "flour-temperature", "°C", flours);
    measures.addAll(changes());
    return measures;
  }

  /** The revision of each part that went in: a part that was written anew is another part. */
  private List<Measured> partsMade() {
    Map<String, Map<String, Figure>> parts = new TreeMap<>();
    for (Trial trial : book.trials()) {
      trial
          .pins()
          .forEach(
              (part, revision) ->
                  parts
                      .computeIfAbsent(part, unseen -> new TreeMap<>())
                      .put(trial.id(), Figure.of(revision)));
    }
    List<Measured> measures = new ArrayList<>();
    parts.forEach(
        (part, figures) ->
            measures.add(Measured.loose(new Measured.Key("", REVISION, part, ""), figures)));
    return measures;
  }

  private static void add(
      List<Measured> measures, String measure, String unit, Map<String, Figure> figures) {
    if (!figures.isEmpty()) {
      measures.add(Measured.loose(new Measured.Key("", measure, "", unit), figures));
    }
  }

  private static void temperature(
      Trial trial, @Nullable Temperature temperature, Map<String, Figure> into) {
    if (temperature != null) {
      into.put(trial.id(), Figure.of(temperature.celsius()));
    }
  }

  private void size(Trial trial, Map<String, Figure> into) {
    if (trial.to() == null) {
      into.put(trial.id(), Figure.of(1));
      return;
    }
    try {
      into.put(trial.id(), Figure.of(kitchen.batch(trial.formula(), trial.to()).factor()));
    } catch (Refusal refusal) {
      notes.remark(
          "size-not-known", "/trials", "trial `" + trial.id() + "`: " + refusal.getMessage());
    }
  }

  /** Every trial says all that was tried, so that what it does not say was not tried. */
  private List<Measured> changes() {
    TreeSet<String> all = new TreeSet<>();
    book.trials().forEach(trial -> trial.changes().forEach(change -> all.add(change.strip())));
    List<Measured> measures = new ArrayList<>();
    for (String change : all) {
      Map<String, Figure> figures = new TreeMap<>();
      for (Trial trial : book.trials()) {
        boolean tried = trial.changes().stream().anyMatch(one -> one.strip().equals(change));
        figures.put(trial.id(), Figure.of(tried ? 1 : 0, null, tried ? "tried" : "not tried"));
      }
      measures.add(Measured.loose(new Measured.Key("", CHANGE, change, ""), figures));
    }
    return measures;
  }
}
