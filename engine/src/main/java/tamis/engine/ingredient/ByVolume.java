package tamis.engine.ingredient;

import java.util.List;
import java.util.Objects;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;

/** Weighs a volume by the density of a state and a measure. */
record ByVolume(String at, String cited, Notes notes) {

  Spread grams(Unit unit, Ingredient ingredient, @Nullable String state) {
    List<StateDensity> all = ingredient.densities();
    if (all.isEmpty()) {
      throw Weighing.refused(
          FaultCode.NO_DENSITY,
          ingredient.id(),
          "a mass, or an ingredient with a density",
          "no density is known of `"
              + ingredient.id()
              + "`, so a volume of it cannot be weighed; give a mass");
    }
    String wanted = state == null ? StateDensity.AS_MEASURED : state;
    @Nullable StateDensity row = best(all, wanted, unit);
    if (row != null) {
      IngredientSource.cite(row, ingredient, cited, notes);
      return row.of(unit);
    }
    if (state != null) {
      throw unknownState(state, ingredient, all.stream().map(StateDensity::state).toList());
    }
    return anyState(all, unit, ingredient);
  }

  /** No state is said and the food has only particular ones: the first, with the span of all. */
  private Spread anyState(List<StateDensity> all, Unit unit, Ingredient ingredient) {
    String first = all.get(0).state();
    StateDensity row = Objects.requireNonNull(best(all, first, unit));
    IngredientSource.cite(row, ingredient, cited, notes);
    List<String> states = all.stream().map(StateDensity::state).distinct().toList();
    if (states.size() == 1) {
      notes.remark(
          "state-assumed",
          at,
          "`"
              + ingredient.id()
              + "` is taken as "
              + first
              + ", the one state its mass is known for");
      return row.of(unit);
    }
    notes.estimate(
        "state-assumed",
        at,
        "`"
            + ingredient.id()
            + "` is taken as "
            + first
            + "; its mass differs by state: "
            + String.join(", ", states));
    double low = all.stream().mapToDouble(d -> d.spread().low()).min().orElseThrow();
    double high = all.stream().mapToDouble(d -> d.spread().high()).max().orElseThrow();
    return new Spread(low * unit.factor(), row.of(unit).typical(), high * unit.factor());
  }

  /**
   * Of a state the row weighed with the measure that is asked for, else with a cup, else the first;
   * null if there is none.
   */
  private static @Nullable StateDensity best(List<StateDensity> all, String state, Unit unit) {
    @Nullable StateDensity best = null;
    for (StateDensity row : all) {
      if (row.state().equals(state)) {
        if (unit.symbol().equals(row.measure())) {
          return row;
        }
        best = best == null || (isCup(row) && !isCup(best)) ? row : best;
      }
    }
    return best;
  }

  private static boolean isCup(StateDensity row) {
    return "cup".equals(row.measure());
  }

  private static Refusal unknownState(String state, Ingredient ingredient, List<String> states) {
    String known = String.join(", ", new TreeSet<>(states));
    return Weighing.refused(
        FaultCode.UNKNOWN_STATE,
        state,
        known,
        "the mass of `"
            + ingredient.id()
            + "` is not known as `"
            + state
            + "`; known are "
            + known);
  }
}
