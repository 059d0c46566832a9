package tamis.api.http;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.api.store.Stored;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.trial.Trial;

/**
 * A trial with the revisions that it was made by: what its sender leaves open is what is the newest
 * when it is first kept, so that a formula that is changed later does not change what was made.
 */
final class Pinned {
  private final Store store;
  private final Map<String, Integer> pins;

  private Pinned(Store store, Map<String, Integer> given) {
    this.store = store;
    this.pins = new TreeMap<>(given);
  }

  /**
   * @param before what is replaced, whose pins stay unless another is told; or null
   */
  static Trial of(Trial trial, @Nullable Trial before, Store store) {
    FormulaRef made = trial.formula();
    boolean same = before != null && Objects.equals(before.formula().id(), made.id());
    Trial known = same && before != null ? before : trial;
    boolean open = made.revision() == null;
    @Nullable Stored stored = stored(store, open ? known.formula() : made);
    if (stored == null) {
      return trial;
    }
    Map<String, Integer> given = new TreeMap<>();
    if (Objects.equals(known.formula().revision(), stored.number())) {
      given.putAll(known.pins());
    }
    given.putAll(trial.pins());
    Pinned pinned = new Pinned(store, given);
    pinned.parts(stored);
    return new Trial(
        trial.id(),
        new FormulaRef(made.id(), stored.number(), null),
        pinned.pins,
        trial.to(),
        trial.started(),
        trial.changes(),
        trial.actuals(),
        trial.roomTemperature(),
        trial.flourTemperature(),
        trial.result(),
        trial.observations(),
        trial.notes());
  }

  private static @Nullable Stored stored(Store store, FormulaRef reference) {
    String id = String.valueOf(reference.id());
    Integer revision = reference.revision();
    return revision == null ? store.read(Kind.FORMULA, id) : store.read(Kind.FORMULA, id, revision);
  }

  private void parts(Stored root) {
    Deque<Stored> open = new ArrayDeque<>(Set.of(root));
    Set<String> seen = new HashSet<>(Set.of(root.id()));
    while (!open.isEmpty()) {
      var document = open.pop().document();
      if (document == null || !(document.record() instanceof Formula formula)) {
        continue;
      }
      for (Line line : formula.lines()) {
        FormulaRef part = line.formula();
        if (part != null && part.id() != null && seen.add(part.id())) {
          part(part.id(), part, open);
        }
      }
    }
  }

  private void part(String id, FormulaRef written, Deque<Stored> open) {
    Integer told = pins.get(id);
    @Nullable Stored stored =
        stored(store, told == null ? written : new FormulaRef(id, told, null));
    if (stored != null) {
      pins.putIfAbsent(id, stored.number());
      open.push(stored);
    }
  }
}
