package tamis.plugin.intake.name;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.spi.Kitchen;

/**
 * What the kitchen answers to names. Each name is asked for once, and only so many that nobody
 * knows: a novel is full of them, and each of them costs a search for names that are near.
 */
public final class Larder {
  private static final int MOST_UNKNOWN = 1_500;

  private final Kitchen kitchen;
  private final Map<String, Answered> answers = new HashMap<>();
  private int unknown;

  /**
   * @param ingredient of the name, or null
   * @param several ids that go by the name, if there are several
   * @param suggestion what may have been meant; empty if nothing is near
   */
  record Answered(@Nullable Ingredient ingredient, List<String> several, String suggestion) {}

  public Larder(Kitchen kitchen) {
    this.kitchen = kitchen;
  }

  public Ingredient byId(String id) {
    return kitchen.ingredient(new IngredientRef(id));
  }

  Answered named(String folded) {
    @Nullable Answered known = answers.get(folded);
    if (known == null) {
      known = asked(folded);
      answers.put(folded, known);
    }
    return known;
  }

  private Answered asked(String name) {
    if (unknown >= MOST_UNKNOWN) {
      return new Answered(null, List.of(), "");
    }
    try {
      return new Answered(kitchen.ingredient(new IngredientRef(name)), List.of(), "");
    } catch (Refusal refusal) {
      var fault = refusal.faults().get(0);
      @Nullable String allowed = fault.allowed();
      if (fault.code() == FaultCode.AMBIGUOUS_INGREDIENT && allowed != null) {
        return new Answered(null, List.of(allowed.split(", ", -1)), "");
      }
      unknown++;
      int near = fault.message().indexOf("; did you mean");
      return new Answered(null, List.of(), near < 0 ? "" : fault.message().substring(near));
    }
  }

  /** Whether an ingredient is built in, and not replaced by the shop. */
  static boolean isBuiltIn(Ingredient ingredient) {
    return ingredient.equals(ReferenceIngredients.standard().byId(ingredient.id()));
  }
}
