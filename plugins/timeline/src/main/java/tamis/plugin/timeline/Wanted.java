package tamis.plugin.timeline;

import org.jspecify.annotations.Nullable;
import tamis.engine.formula.FormulaRef;
import tamis.engine.record.TextOrObject;

/**
 * A formula that is to be ready: its id, or an object that also says how much of it.
 *
 * @param formula the formula
 * @param object the object form, or null if the id was given
 */
public record Wanted(FormulaRef formula, @Nullable WantedFormula object)
    implements TextOrObject<WantedFormula> {

  /** Reads an id, or an id with its revision. */
  public static Wanted parse(String text) {
    return new Wanted(FormulaRef.parse(text), null);
  }

  /** One of which more is said than its id. */
  public static Wanted of(WantedFormula object) {
    return new Wanted(object.reference(), object);
  }

  @Override
  public @Nullable String text() {
    return object == null ? formula.text() : null;
  }
}
