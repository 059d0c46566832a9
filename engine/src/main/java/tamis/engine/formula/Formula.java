package tamis.engine.formula;

import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Measures;
import tamis.engine.record.Described;
import tamis.engine.record.Limit;
import tamis.engine.record.Nearest;

/** The formula document: what many call a recipe. */
public record Formula(
    @Described(
            value = "Lower-case words with hyphens",
            example = "coffee-meringue-cream",
            most = 80)
        @Nullable String id,
    @Described(value = "For a person", example = "Coffee meringue cream", most = 400)
        @Nullable String title,
    @Described("Whose cup, tablespoon, pint and fluid ounce is meant; US if left out")
        @Nullable Measures measures,
    @Described(
            value = "Ingredients and sub-formulas in the order of work",
            fewest = 1,
            limit = Limit.LINES)
        List<Line> lines,
    @Described("What it gives as written") @Nullable Yield yield,
    @Described(value = "Steps of work", optional = true, most = 200) List<Stage> stages,
    @Described(value = "How long it keeps", optional = true, most = 20) List<ShelfLife> shelfLife,
    @Described(value = "What it is packed in", optional = true, most = 100)
        List<Packaging> packaging,
    @Described(
            value = "Ingredients that count as flour in this formula besides those that always do",
            optional = true,
            most = 100)
        List<IngredientRef> flour,
    @Described(value = "Notes for the baker", most = 20_000) @Nullable String notes,
    @Described(value = "Where it comes from", most = 2_000) @Nullable String origin) {

  public Formula {
    Faults faults = new Faults();
    if (id != null && !Ingredient.isId(id)) {
      faults.add(FaultCode.NOT_ALLOWED, "/id", "an id is lower-case words with hyphens, was " + id);
    }
    Set<String> ids = stageIds(stages, faults);
    for (int i = 0; i < stages.size(); i++) {
      Stage stage = stages.get(i);
      linked(stage.after(), stage, ids, i, "after", faults);
      linked(stage.meets(), stage, ids, i, "meets", faults);
    }
    for (int i = 0; i < lines.size(); i++) {
      @Nullable String stage = lines.get(i).stage();
      if (stage != null && !ids.contains(stage)) {
        unknown(stage, ids, "/lines/" + i + "/stage", faults);
      }
    }
    if (faults.isEmpty()) {
      StageOrder.refuseCycle(stages, faults);
    }
    faults.refuseIfAny();
  }

  /** A formula of lines and nothing else, for examples and tests. */
  public static Formula of(String id, Measures measures, Line... lines) {
    return new Formula(
        id,
        null,
        measures,
        List.of(lines),
        null,
        List.of(),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
  }

  private static Set<String> stageIds(List<Stage> stages, Faults faults) {
    Set<String> ids = new HashSet<>();
    for (int i = 0; i < stages.size(); i++) {
      String stage = stages.get(i).id();
      if (!Ingredient.isId(stage)) {
        faults.add(
            FaultCode.NOT_ALLOWED,
            "/stages/" + i + "/id",
            "a stage's id is lower-case words with hyphens, was " + stage);
      }
      if (!ids.add(stage)) {
        faults.add(
            FaultCode.DUPLICATE, "/stages/" + i + "/id", "stage `" + stage + "` stands twice");
      }
    }
    return ids;
  }

  private static void linked(
      List<String> names,
      Stage stage,
      Set<String> ids,
      int index,
      String component,
      Faults faults) {
    for (int i = 0; i < names.size(); i++) {
      String name = names.get(i);
      if (ids.contains(name) && !name.equals(stage.id())) {
        continue;
      }
      String pointer = "/stages/" + index + "/" + component;
      if (name.equals(stage.id())) {
        faults.add(
            FaultCode.CYCLE, pointer + "/" + i, "stage `" + name + "` cannot wait for itself");
      } else {
        unknown(name, ids, pointer + "/" + i, faults);
      }
    }
  }

  private static void unknown(String stage, Set<String> ids, String pointer, Faults faults) {
    faults.add(
        new Fault(
            FaultCode.UNKNOWN_STAGE,
            pointer,
            stage,
            String.join(", ", ids),
            "no stage `" + stage + "` in this formula" + Nearest.suggestion(stage, ids)));
  }

  /** The yield, or one of which nothing is said. */
  public Yield yieldOrNothing() {
    return yield == null ? Yield.nothingSaid() : yield;
  }

  /** The stage that a line goes into: the one it names, else the first that waits for none. */
  public @Nullable String stageOf(Line line) {
    if (line.stage() != null) {
      return line.stage();
    }
    return stages.stream()
        .filter(stage -> stage.after().isEmpty())
        .findFirst()
        .map(Stage::id)
        .orElse(null);
  }

  /** Whose measures are meant. */
  public Measures measuresOrUs() {
    return measures == null ? Measures.US : measures;
  }

  /** Title, else id, else "this formula". */
  public String name() {
    if (title != null) {
      return title;
    }
    return id == null ? "this formula" : id;
  }

  /** The pointer of a line within the document. */
  public static String linePointer(int index) {
    return "/lines/" + index;
  }
}
