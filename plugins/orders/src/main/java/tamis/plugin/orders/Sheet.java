package tamis.plugin.orders;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;

/** The rows of a production sheet. */
public final class Sheet {
  private Sheet() {}

  /** Equal batches of one formula. */
  public record BatchRow(
      @Described(value = "Id of the formula", example = "genoise") String formula,
      @Described("For a person") String title,
      @Described("How many batches of this size") int number,
      @Described("Times the formula as written") double factor,
      @Described(value = "Weighed in for one of them", unit = "g") double grams,
      @Described("Pieces of one of them") @Nullable Double pieces,
      @Described("Portions of one of them") @Nullable Double portions,
      @Described(value = "Machine it is made on", example = "20 l bowl") @Nullable String machine,
      @Described("Eggs that one of them breaks, where the formula counts them")
          @Nullable Double eggs) {}

  /** One formula over the day. */
  public record Made(
      @Described("Id of the formula") String formula,
      @Described("For a person") String title,
      @Described(value = "Finished mass that is needed", unit = "g") double neededGrams,
      @Described(value = "Taken from what is on hand", unit = "g") double fromStockGrams,
      @Described(value = "Finished mass of all batches", unit = "g") double madeGrams,
      @Described(value = "Made over what is needed", unit = "g") double spareGrams,
      @Described("Portions made over what is needed") @Nullable Double sparePortions,
      @Described("Whether no choice of batches leaves less over") boolean best,
      @Described(value = "How much less could be over at most", unit = "g") double gapGrams) {}

  /** One ingredient of all batches. */
  public record Used(
      @Described("Id of the ingredient") String ingredient,
      @Described("For a person") String name,
      @Described(value = "Weighed in", unit = "g") double grams,
      @Described(value = "Of it from what is on hand", unit = "g") double fromStockGrams,
      @Described("Whether some of it is used as needed, without an amount") boolean asNeeded) {}

  /** What is left of eggs and fruit. */
  public record Left(
      @Described("Id of what is left") String ingredient,
      @Described(value = "Left when all is made", unit = "g") double grams,
      @Described("Id of the whole it comes from") String from,
      @Described(value = "All of it that the wholes give which are opened", unit = "g")
          double madeGrams,
      @Described(value = "Of it used that day", unit = "g") double usedGrams) {}

  /** One thing to buy. */
  public record Bought(
      @Described("Id of the ingredient, or name of the packaging") String item,
      @Described(value = "Needed beyond what is on hand, ready to use", unit = "g")
          @Nullable Double grams,
      @Described("Needed of packaging") @Nullable Double count,
      @Described(value = "Unit of `count`: each, or what it is measured in", example = "each")
          @Nullable String unit,
      @Described(value = "The pack, if there is a price", example = "10 kg") @Nullable String pack,
      @Described("Packs to buy") @Nullable Long packs,
      @Described("What these packs cost") @Nullable Money price,
      @Described(value = "Left of them, ready to use", unit = "g") @Nullable Double leftGrams,
      @Described("Who sells it") @Nullable String supplier) {}

  /** What is left on hand. */
  public record StockLeft(
      @Described("Id of the ingredient") @Nullable String ingredient,
      @Described("Id of the finished part") @Nullable String formula,
      @Described(value = "Left on hand", unit = "g") double grams) {}

  /** What is over of one formula. */
  public record Over(
      @Described("Id of the formula") String formula,
      @Described(value = "Finished mass that is over", unit = "g") double grams,
      @Described("Cakes it would cover, if it is spread") List<Cover> covers) {}

  /** One cake that would be covered. */
  public record Cover(
      @Described("The cake in words") String cake,
      @Described("So many of these cakes") double cakes,
      @Described("Whole cakes among them") int wholeCakes) {}

  /** Equal order lines together. */
  public record Ordered(
      @Described("Id of the formula") String formula,
      @Described("For a person") String title,
      @Described(value = "Size of one", example = "12 portions") String size,
      @Described("How many, over all equal lines") long count,
      @Described("Places of these lines in the orders, from 0") List<Integer> entries,
      @Described(value = "Finished mass of all of them", unit = "g") double grams,
      @Described("Portions of all of them") @Nullable Double portions,
      @Described("What they cost; they and what is over add up to the cost of all")
          @Nullable Money cost,
      @Described("Allergens they contain") List<Allergen> contains,
      @Described("Allergens they may contain") List<Allergen> mayContain) {}
}
