package tamis.engine.formula;

import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.PieceMass;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;

/**
 * The largest batch that what is on hand allows. A finished part on hand is used and not made anew,
 * so its own ingredients are not asked for; what is not named is taken to be there.
 */
final class StockSizing {
  private static final String INGREDIENT = "ingredient ";

  private final Larder larder;
  private final Draft draft;
  private final Notes notes;

  StockSizing(Larder larder, Draft draft, Notes notes) {
    this.larder = larder;
    this.draft = draft;
    this.notes = notes;
  }

  Sizing.Size size(List<StockItem> stock) {
    Map<String, Double> onHand = onHand(stock);
    Map<String, Double> needed = new HashMap<>();
    need(draft, 1, onHand, needed);
    openWholes(onHand, needed);
    double factor = Double.POSITIVE_INFINITY;
    @Nullable String limitedBy = null;
    for (Map.Entry<String, Double> item : onHand.entrySet()) {
      double need = needed.getOrDefault(item.getKey(), 0.0);
      String name = item.getKey().substring(item.getKey().indexOf(' ') + 1);
      if (need <= 0) {
        notes.remark("not-needed", "/to/stock", "`" + name + "` is on hand but not needed");
      } else if (item.getValue() / need < factor) {
        factor = item.getValue() / need;
        limitedBy = name;
      }
    }
    if (limitedBy == null) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          "/to/stock",
          "nothing of what is on hand is needed for `" + draft.formula().name() + "`");
    }
    if (factor <= 0) {
      throw Refusal.of(
          FaultCode.IMPOSSIBLE,
          "/to/stock",
          "nothing can be made: there is no `" + limitedBy + "`");
    }
    return new Sizing.Size(factor, limitedBy);
  }

  /** Eggs on hand are opened for the yolks and whites that are not on hand themselves. */
  private void openWholes(Map<String, Double> onHand, Map<String, Double> needed) {
    Map<String, Double> used = new HashMap<>();
    needed.forEach(
        (key, grams) -> {
          if (key.startsWith(INGREDIENT) && !onHand.containsKey(key)) {
            used.put(key.substring(INGREDIENT.length()), grams);
          }
        });
    ByProducts.opened(used)
        .forEach(
            (whole, count) -> {
              if (count > 0 && onHand.containsKey(INGREDIENT + whole)) {
                needed.merge(INGREDIENT + whole, count * gramsOfOne(whole), Double::sum);
              }
            });
  }

  private double gramsOfOne(String whole) {
    Ingredient ingredient = larder.ingredient(new IngredientRef(whole));
    Weighing weighing = new Weighing(Measures.US, "", "", new Notes());
    return weighing.gramsPerUnit(PieceMass.EACH, ingredient, null).typical();
  }

  /** Grams on hand by {@code ingredient id} or {@code formula id}. */
  private Map<String, Double> onHand(List<StockItem> stock) {
    Faults faults = new Faults();
    Map<String, Double> onHand = new LinkedHashMap<>();
    for (int i = 0; i < stock.size(); i++) {
      StockItem item = stock.get(i);
      String at = "/to/stock/" + i;
      faults.gather(at, () -> onHand.merge(key(item), grams(item, at), Double::sum));
    }
    faults.refuseIfAny();
    return onHand;
  }

  private String key(StockItem item) {
    if (item.ingredient() != null) {
      return INGREDIENT + ingredient(item.ingredient()).id();
    }
    FormulaRef part = Objects.requireNonNull(item.formula());
    @Nullable String id = part.object() == null ? part.id() : part.object().id();
    if (id == null) {
      throw Refusal.of(FaultCode.MISSING, "/formula", "a part on hand is named by its id");
    }
    return "formula " + id;
  }

  private Ingredient ingredient(IngredientRef reference) {
    return under("/ingredient", () -> larder.ingredient(reference));
  }

  private double grams(StockItem item, String at) {
    Quantity quantity = item.quantity();
    Weighing weighing =
        new Weighing(draft.formula().measures(), at + "/quantity", "/factor", notes);
    if (item.ingredient() != null) {
      Ingredient ingredient = ingredient(item.ingredient());
      return under("/quantity", () -> weighing.grams(quantity, ingredient, null).typical());
    }
    if (!quantity.isMeasured() || quantity.dimension() != Dimension.MASS) {
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_DIMENSION,
              "/quantity",
              quantity.text(),
              "a mass",
              "a finished part on hand is given by its mass, was " + quantity.text()));
    }
    return quantity.amount() * weighing.unit(quantity.unit()).factor();
  }

  private static <T> T under(String at, Supplier<T> step) {
    try {
      return step.get();
    } catch (Refusal refusal) {
      throw refusal.under(at);
    }
  }

  private static void need(
      Draft draft, double factor, Map<String, Double> onHand, Map<String, Double> needed) {
    for (Draft.DraftLine line : draft.lines()) {
      double grams = line.grams().typical() * factor;
      if (line.ingredient() != null) {
        needed.merge(INGREDIENT + line.ingredient().id(), grams, Double::sum);
      } else if (line.part() != null) {
        String key = "formula " + line.part().formula().id();
        if (onHand.containsKey(key)) {
          needed.merge(key, grams, Double::sum);
        } else {
          need(line.part(), grams / line.part().finished().typical(), onHand, needed);
        }
      }
    }
  }
}
