package tamis.plugin.costing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Per;
import tamis.engine.formula.Repeats;
import tamis.engine.formula.Stage;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;

/**
 * The stages of a batch in the order of work: a part is made just before the stage that takes it
 * up; within a formula a stage comes after those it names, else in the order as written. A stage
 * that names no other waits for none. A line without a stage goes into the first.
 */
final class Work {
  private final @Nullable To to;
  private final Notes notes;

  private Work(@Nullable To to, Notes notes) {
    this.to = to;
    this.notes = notes;
  }

  static List<StageWork> of(Batch batch, @Nullable To to, Notes notes) {
    Work work = new Work(to, notes);
    Made made = work.made(batch.root());
    if (!batch.root().formula().stages().isEmpty()) {
      return made.stages();
    }
    StageWork all = new StageWork(batch.root(), null, null);
    all.add(made.loose());
    made.stages().forEach(all::follows);
    made.stages().add(all);
    notes.remark(
        "no-stages",
        "/formula",
        "the formula names no stages, so all of it is spent at once; name stages to see what is at"
            + " risk at each");
    return made.stages();
  }

  /** The stages of a part, and what is added to it in none of them. */
  private record Made(List<StageWork> stages, Map<Ingredient, Double> loose) {}

  private Made made(Part part) {
    List<Stage> order = inOrder(part.formula().stages());
    List<StageWork> done = new ArrayList<>();
    Map<String, StageWork> own = new HashMap<>();
    for (Stage stage : order) {
      StageWork here = new StageWork(part, stage, minutes(part, stage));
      here.add(lines(part, stage.id()));
      for (Part inner : part.parts()) {
        if (stage.id().equals(part.formula().stageOf(part.lineOf(inner)))) {
          take(inner, here, done);
        }
      }
      stage.after().forEach(earlier -> follow(here, own.get(earlier)));
      own.put(stage.id(), here);
      done.add(here);
    }
    Map<Ingredient, Double> loose = new LinkedHashMap<>();
    if (order.isEmpty()) {
      loose.putAll(lines(part, null));
      for (Part inner : part.parts()) {
        Made deeper = made(inner);
        done.addAll(deeper.stages());
        deeper.loose().forEach((one, grams) -> loose.merge(one, grams, Double::sum));
      }
    }
    return new Made(done, loose);
  }

  private void take(Part inner, StageWork here, List<StageWork> done) {
    Made made = made(inner);
    here.add(made.loose());
    made.stages().stream().filter(one -> !one.isBefore(made.stages())).forEach(here::follows);
    done.addAll(made.stages());
  }

  private static void follow(StageWork here, @Nullable StageWork earlier) {
    if (earlier != null) {
      here.follows(earlier);
    }
  }

  private static Map<Ingredient, Double> lines(Part part, @Nullable String stage) {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    for (BatchLine line : part.lines()) {
      if (Objects.equals(part.formula().stageOf(line.line()), stage)) {
        grams.merge(line.ingredient(), line.grams().typical(), Double::sum);
      }
    }
    return grams;
  }

  private static List<Stage> inOrder(List<Stage> written) {
    List<Stage> open = new ArrayList<>(written);
    List<Stage> order = new ArrayList<>();
    List<String> done = new ArrayList<>();
    while (!open.isEmpty()) {
      Stage next = open.stream().filter(s -> done.containsAll(s.after())).findFirst().orElseThrow();
      open.remove(next);
      order.add(next);
      done.add(next.id());
    }
    return order;
  }

  private @Nullable Double minutes(Part part, Stage stage) {
    if (stage.duration() == null) {
      return null;
    }
    Repeats.Count times = Repeats.of(part, part.path().isEmpty() ? to : null).of(stage);
    if (times.number() == null) {
      notes.estimate(
          "repeats-not-known",
          "/formula",
          "stage `"
              + stage.id()
              + "` is done for each "
              + (stage.per() == Per.PIECE ? "piece" : "load")
              + ", but "
              + times.lacks()
              + "; it is counted once");
    }
    return stage.duration().minutes() * (times.number() == null ? 1 : times.number());
  }
}
