package tamis.plugin.costing;

import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Stage;
import tamis.engine.ingredient.Ingredient;

/** One stage of one part: what is added in it, how long it takes, and what must be done before. */
final class StageWork {
  static final String ALL = "all";

  private final Part part;
  private final @Nullable Stage stage;
  private final @Nullable Double minutes;
  private final Set<StageWork> before = new LinkedHashSet<>();
  private final Map<Ingredient, Double> grams = new LinkedHashMap<>();

  /**
   * @param stage null for a formula that names none
   * @param minutes all repeats together, or null if not known
   */
  StageWork(Part part, @Nullable Stage stage, @Nullable Double minutes) {
    this.part = part;
    this.stage = stage;
    this.minutes = minutes;
  }

  void add(Map<Ingredient, Double> more) {
    more.forEach((ingredient, one) -> grams.merge(ingredient, one, Double::sum));
  }

  void follows(StageWork earlier) {
    before.add(earlier);
  }

  Part part() {
    return part;
  }

  @Nullable Stage stage() {
    return stage;
  }

  String id() {
    return stage == null ? ALL : stage.id();
  }

  /** The formula and the stage, which tells equal stages of two parts apart. */
  String fullName() {
    @Nullable String formula = part.formula().id();
    return formula == null ? id() : formula + "/" + id();
  }

  @Nullable Double minutes() {
    return minutes;
  }

  /** Whether it keeps hands busy; unless told otherwise it does. */
  boolean hands() {
    return stage != null && !Boolean.FALSE.equals(stage.hands());
  }

  Map<Ingredient, Double> grams() {
    return grams;
  }

  boolean isBefore(List<StageWork> others) {
    return others.stream().anyMatch(other -> other.before.contains(this));
  }

  /** Stages that must be done before, of this part and of those it takes up. */
  Set<StageWork> before() {
    return before;
  }

  String partName() {
    @Nullable String id = part.formula().id();
    return id == null ? part.formula().name() : id;
  }
}
