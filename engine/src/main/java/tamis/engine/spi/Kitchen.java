package tamis.engine.spi;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.PriceList;
import tamis.engine.record.References;
import tamis.engine.table.Table;
import tamis.engine.trial.Trial;

/**
 * Everything that a calculation may look up, at one revision: what it sees does not change while it
 * works. May be used by many threads.
 */
public interface Kitchen extends References {
  /** The revision that is seen, over formulas, ingredients and prices. */
  long revision();

  /** When that revision was written; null where that is not known, or nothing was written yet. */
  default @Nullable Instant written() {
    return null;
  }

  /**
   * The formula that is named, or the document that is given.
   *
   * @throws Refusal {@code unknown-formula}, with a suggestion
   */
  Formula formula(FormulaRef reference);

  /**
   * The ingredient of this id or name. Exact but for case: a near miss is refused and suggested.
   *
   * @throws Refusal {@code unknown-ingredient} or {@code ambiguous-ingredient}
   */
  Ingredient ingredient(IngredientRef reference);

  /**
   * A table by name, of the engine or of a plugin.
   *
   * @throws Refusal {@code unknown-table}
   */
  Table table(String name);

  /** The shop's prices; empty if none were set. */
  PriceList prices();

  /**
   * A trial by id.
   *
   * @throws Refusal {@code unknown-trial}
   */
  Trial trial(String id);

  /** All trials of a formula, of any revision, in the order in which they were started. */
  List<Trial> trialsOf(String formula);

  /**
   * The batch of a formula at a size; as written if {@code to} is null. Pointers of faults begin
   * with {@code /formula} or {@code /to}, as every calculation names these inputs.
   *
   * @throws Refusal with all faults of all parts
   */
  Batch batch(FormulaRef formula, @Nullable To to);

  /**
   * The result of another calculation, whose classes the caller need not know. {@code input} holds
   * maps, lists, texts, numbers and booleans, named as in a JSON body.
   *
   * @throws Refusal {@code unknown-calculation}, its own faults, or {@code too-deep} if
   *     calculations call each other without end
   */
  Answer<?> calculate(String name, Map<String, ?> input);
}
