package tamis.plugin.costing;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.Per;
import tamis.engine.formula.Stage;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.price.Purchases;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Quantity;

/**
 * The stages of a batch in the order of work: a part is made just before the stage that takes it
 * up; within a formula a stage comes after those it names, else in the order as written. A stage
 * that names no other waits for none. A line without a stage goes into the first.
 */
final class Work {
  /** Loads that are full but for the rounding of a division. */
  private static final double HARDLY_ANY = 1e-9;

  private final Batch batch;
  private final @Nullable To to;
  private final Notes notes;

  private Work(Batch batch, @Nullable To to, Notes notes) {
    this.batch = batch;
    this.to = to;
    this.notes = notes;
  }

  static List<StageWork> of(Batch batch, @Nullable To to, Notes notes) {
    Work work = new Work(batch, to, notes);
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

  /** So many pieces as the batch gives, or null if nothing tells. */
  static @Nullable Double pieces(Batch batch, @Nullable To to) {
    if (to != null && to.pieces() != null) {
      return to.pieces();
    }
    Yield yield = batch.root().formula().yieldOrNothing();
    if (yield.pieces() == null) {
      return null;
    }
    // Pieces that are tins: other tins are asked for, so many pieces come out.
    boolean inTins = yield.pans().stream().mapToInt(PanCount::number).sum() == yield.pieces();
    return to != null && !to.pans().isEmpty() && inTins
        ? (Double) (double) to.pans().stream().mapToInt(PanCount::number).sum()
        : (Double) (yield.pieces() * batch.factor());
  }

  /** The stages of a part, and what is added to it in none of them. */
  private record Made(List<StageWork> stages, Map<Ingredient, Double> loose) {}

  private Made made(Part part) {
    List<Stage> order = inOrder(part.formula().stages());
    List<StageWork> done = new ArrayList<>();
    Map<String, StageWork> own = new HashMap<>();
    for (Stage stage : order) {
      StageWork here = new StageWork(part, stage, minutes(part, stage));
      boolean first = own.isEmpty();
      here.add(lines(part, stage.id(), first));
      for (Part inner : part.parts()) {
        if (isAt(part.lineOf(inner).stage(), stage.id(), first)) {
          take(inner, here, done);
        }
      }
      stage.after().forEach(earlier -> follow(here, own.get(earlier)));
      own.put(stage.id(), here);
      done.add(here);
    }
    Map<Ingredient, Double> loose = new LinkedHashMap<>();
    if (order.isEmpty()) {
      loose.putAll(lines(part, "", true));
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

  private static Map<Ingredient, Double> lines(Part part, String stage, boolean first) {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    for (BatchLine line : part.lines()) {
      if (isAt(line.line().stage(), stage, first)) {
        grams.merge(line.ingredient(), line.grams().typical(), Double::sum);
      }
    }
    return grams;
  }

  private static boolean isAt(@Nullable String named, String stage, boolean first) {
    return named == null ? first : named.equals(stage);
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
    return stage.duration().minutes() * repeats(part, stage);
  }

  private double repeats(Part part, Stage stage) {
    Per per = stage.per() == null ? Per.BATCH : stage.per();
    if (per == Per.BATCH) {
      return 1;
    }
    @Nullable Double amount = amount(part, stage, per);
    if (amount == null) {
      notes.estimate(
          "repeats-not-known",
          "/formula",
          "stage `"
              + stage.id()
              + "` is done for each "
              + per.name().toLowerCase(java.util.Locale.ROOT)
              + ", but the formula does not say how many there are; it is counted once");
      return 1;
    }
    return per == Per.PIECE ? amount : Math.ceil(amount - HARDLY_ANY);
  }

  /** Pieces, or loads. */
  private @Nullable Double amount(Part part, Stage stage, Per per) {
    Yield yield = part.formula().yieldOrNothing();
    @Nullable Double pieces =
        part.path().isEmpty()
            ? pieces(batch, to)
            : yield.pieces() == null ? null : (Double) (yield.pieces() * part.factor());
    @Nullable Quantity load = stage.load();
    if (per == Per.PIECE || load == null) {
      return per == Per.PIECE ? pieces : null;
    }
    double one = load.isMeasured() ? Purchases.amount(load) : 0;
    if (one <= 0) {
      return null;
    }
    return load.dimension() == Dimension.MASS
        ? (Double) (part.madeUp().typical() / one)
        : pieces == null ? null : (Double) (pieces / one);
  }
}
