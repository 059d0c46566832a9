package tamis.engine.price;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.ByProducts;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.PieceMass;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;

/**
 * An ingredient bill with the packs it is bought in. A part without a price of its own (a yolk) is
 * bought as the whole (the egg): as many wholes as the part that is used most asks for, their cost
 * by the grams that are used of each part.
 *
 * @param rows as the bill has them
 */
public record PricedBill(List<Row> rows) {
  public PricedBill {
    rows = List.copyOf(rows);
  }

  /**
   * One ingredient.
   *
   * @param ingredient what is used
   * @param grams of the edible part
   * @param boughtAs what is bought, if that is the whole of which this is a part
   * @param boughtGrams edible grams of what is bought
   * @param offer null if there is no price
   */
  public record Row(
      Ingredient ingredient,
      double grams,
      @Nullable Ingredient boughtAs,
      double boughtGrams,
      @Nullable Offer offer) {

    /** The exact cost in the currency of its pack, or null if there is no price. */
    public @Nullable BigDecimal cost() {
      return offer == null ? null : offer.cost(boughtGrams);
    }
  }

  public static PricedBill of(
      Map<Ingredient, Double> bill,
      Purchases purchases,
      Function<IngredientRef, Ingredient> larder,
      Notes notes) {
    Map<Ingredient, Offer> offers = new HashMap<>();
    Map<String, Double> unpriced = new HashMap<>();
    bill.forEach(
        (ingredient, grams) -> {
          @Nullable Offer offer = purchases.of(ingredient, notes);
          if (offer != null) {
            offers.put(ingredient, offer);
          } else {
            unpriced.put(ingredient.id(), grams);
          }
        });
    Map<String, Whole> wholes = wholes(unpriced, purchases, larder, notes);
    List<Row> rows = new ArrayList<>();
    bill.forEach(
        (ingredient, grams) -> {
          @Nullable Whole whole = wholes.get(ingredient.id());
          rows.add(
              whole == null
                  ? new Row(ingredient, grams, null, grams, offers.get(ingredient))
                  : new Row(
                      ingredient, grams, whole.whole(), grams * whole.perGram(), whole.offer()));
        });
    return new PricedBill(rows);
  }

  /** A whole that parts are bought as, with the grams of it for a gram of a part. */
  private record Whole(Ingredient whole, double perGram, Offer offer) {}

  private static Map<String, Whole> wholes(
      Map<String, Double> used,
      Purchases purchases,
      Function<IngredientRef, Ingredient> larder,
      Notes notes) {
    Map<String, Double> gramsOfParts = new LinkedHashMap<>();
    used.forEach(
        (part, grams) -> {
          @Nullable String whole = ByProducts.wholeOf(part);
          if (whole != null && grams > 0) {
            gramsOfParts.merge(whole, grams, Double::sum);
          }
        });
    Map<String, Double> opened = ByProducts.opened(used);
    Map<String, Whole> found = new HashMap<>();
    gramsOfParts.forEach(
        (id, grams) -> {
          Ingredient whole = larder.apply(new IngredientRef(id));
          @Nullable Offer offer = purchases.of(whole, notes);
          @Nullable Double one = massOfOne(whole);
          if (offer != null && one != null) {
            double perGram = opened.getOrDefault(id, 0.0) * one / grams;
            used.keySet().stream()
                .filter(part -> id.equals(ByProducts.wholeOf(part)))
                .forEach(part -> found.put(part, new Whole(whole, perGram, offer)));
          }
        });
    return found;
  }

  private static @Nullable Double massOfOne(Ingredient whole) {
    boolean counted =
        whole.pieceMass() != null
            || whole.pieces().stream().anyMatch(piece -> PieceMass.EACH.equals(piece.piece()));
    return counted
        ? (Double)
            new Weighing(Measures.METRIC, "", "", new Notes())
                .grams(Quantity.of(1, PieceMass.EACH), whole, null)
                .typical()
        : null;
  }
}
