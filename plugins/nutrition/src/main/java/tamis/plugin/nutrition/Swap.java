package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Contents;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.record.Described;
import tamis.engine.spi.Kitchen;

/** One ingredient in the place of another, wherever it stands in the formula. */
public record Swap(
    @Described(value = "Id or name of the ingredient that is taken out", example = "milk-whole")
        IngredientRef ingredient,
    @Described(value = "Id or name of the ingredient that takes its place", example = "milk-oat")
        IngredientRef with,
    @Described(
            value = "Grams of the new one for a gram of the old; 1 if left out",
            moreThan = "0",
            atMost = "100",
            example = "1")
        @Nullable Double ratio) {

  /**
   * The batch with the other ingredient; the oven takes as many grams of water as before.
   *
   * @throws Refusal if the ingredient is not in the formula
   */
  Baked of(Baked baked, Kitchen kitchen) {
    Ingredient old = kitchen.ingredient(ingredient);
    Ingredient other = kitchen.ingredient(with);
    double times = ratio == null ? 1 : ratio;
    List<Contents.Entry> entries = new ArrayList<>();
    double more = 0;
    boolean found = false;
    for (Contents.Entry entry : baked.contents().entries()) {
      if (!entry.line().ingredient().id().equals(old.id())) {
        entries.add(entry);
        continue;
      }
      found = true;
      more += entry.grams() * (times - 1);
      entries.add(
          new Contents.Entry(
              changed(entry.line(), other, times), entry.grams() * times, entry.through()));
    }
    if (!found) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/swap/ingredient",
              ingredient.name(),
              "an ingredient of the formula",
              "`" + old.id() + "` is not in the formula, so nothing can take its place"));
    }
    Contents contents = new Contents(entries, baked.contents().grams() + more);
    return new Baked(contents, baked.grams() + more);
  }

  private static BatchLine changed(BatchLine line, Ingredient other, double times) {
    return new BatchLine(
        line.path(),
        other,
        line.line(),
        line.grams().times(times),
        null,
        line.remains(),
        line.flour());
  }
}
