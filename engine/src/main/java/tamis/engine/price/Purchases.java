package tamis.engine.price;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;

/**
 * What things are bought for: a price in the request goes before the shop's price list, that before
 * the pack in the ingredient's own document. Names in prices are read as everywhere else: an id
 * first, else any name that leads to one food only.
 */
public final class Purchases {
  private final List<Map<String, List<Pack>>> sources;
  private final Function<IngredientRef, Ingredient> larder;

  private Purchases(
      List<Map<String, List<Pack>>> sources, Function<IngredientRef, Ingredient> larder) {
    this.sources = sources;
    this.larder = larder;
  }

  /**
   * @param request packs that the request names
   * @param shop the shop's own list
   * @param larder finds the food of a name, or refuses
   */
  public static Purchases of(
      List<Pack> request, PriceList shop, Function<IngredientRef, Ingredient> larder) {
    List<Pack> listed = new ArrayList<>(shop.prices().size());
    shop.prices().forEach(price -> listed.add(Pack.of(price, Pack.Origin.PRICE_LIST, "")));
    return new Purchases(List.of(byName(request), byName(listed)), larder);
  }

  private static Map<String, List<Pack>> byName(List<Pack> packs) {
    Map<String, List<Pack>> byName = new LinkedHashMap<>();
    for (Pack pack : packs) {
      if (!pack.item().isBlank()) {
        String key = new IngredientRef(pack.item()).folded();
        byName.computeIfAbsent(key, name -> new ArrayList<>(1)).add(pack);
      }
    }
    return byName;
  }

  /**
   * The pack of an ingredient, or null if there is no price of it.
   *
   * @throws Refusal if the request prices it twice, or by a pack that cannot be weighed
   */
  public @Nullable Offer of(Ingredient ingredient, Notes notes) {
    for (Map<String, List<Pack>> source : sources) {
      List<Pack> packs = packs(source, ingredient);
      if (!packs.isEmpty()) {
        Pack first = packs.get(0);
        refuseSecond(packs, ingredient);
        return weighed(first, ingredient, notes);
      }
    }
    return ingredient.purchase() == null
        ? null
        : weighed(Pack.of(ingredient.id(), ingredient.purchase()), ingredient, notes);
  }

  private List<Pack> packs(Map<String, List<Pack>> source, Ingredient ingredient) {
    List<Pack> found = new ArrayList<>(source.getOrDefault(ingredient.id(), List.of()));
    for (List<String> names : ingredient.names().values()) {
      for (String name : names) {
        String folded = new IngredientRef(name).folded();
        if (!folded.equals(ingredient.id()) && means(folded, source, ingredient)) {
          source.getOrDefault(folded, List.of()).stream()
              .filter(pack -> !found.contains(pack))
              .forEach(found::add);
        }
      }
    }
    return found;
  }

  private boolean means(String name, Map<String, List<Pack>> source, Ingredient ingredient) {
    if (!source.containsKey(name)) {
      return false;
    }
    try {
      return larder.apply(new IngredientRef(name)).id().equals(ingredient.id());
    } catch (Refusal severalFoods) {
      return false;
    }
  }

  private static void refuseSecond(List<Pack> packs, Ingredient ingredient) {
    Pack last = packs.get(packs.size() - 1);
    if (packs.size() > 1 && last.origin() == Pack.Origin.REQUEST) {
      throw new Refusal(
          new Fault(
              FaultCode.DUPLICATE,
              last.pointer() + "/ingredient",
              last.item(),
              null,
              "`" + last.item() + "` is `" + ingredient.id() + "`, which has a price already"));
    }
  }

  private static @Nullable Offer weighed(Pack pack, Ingredient ingredient, Notes notes) {
    try {
      Weighing weighing = new Weighing(Measures.METRIC, pack.pointer() + "/pack", "", new Notes());
      double grams = weighing.grams(pack.pack(), ingredient, null).typical();
      if (grams > 0) {
        return new Offer(pack, grams);
      }
      throw Refusal.of(FaultCode.OUT_OF_BOUNDS, "a pack holds more than nothing");
    } catch (Refusal refusal) {
      if (pack.origin() == Pack.Origin.REQUEST) {
        throw refusal.under(pack.pointer() + "/pack");
      }
      notes.remark(
          "price-not-usable",
          "",
          "the price of `"
              + ingredient.id()
              + "` in "
              + pack.origin()
              + " is not used: "
              + refusal.faults().get(0).message());
      return null;
    }
  }

  /** The first pack that goes by this very name, whatever it is; null if there is none. */
  public @Nullable Pack named(String item) {
    String key = new IngredientRef(item).folded();
    for (Map<String, List<Pack>> source : sources) {
      List<Pack> packs = source.getOrDefault(key, List.of());
      if (!packs.isEmpty()) {
        return packs.get(0);
      }
    }
    return null;
  }

  /**
   * The pack of a packaging item for so much of it, or null if there is no price of it.
   *
   * @throws Refusal if pack and quantity do not measure the same
   */
  public @Nullable Offer ofItem(String item, Quantity quantity) {
    @Nullable Pack pack = named(item);
    if (pack == null || !quantity.isMeasured()) {
      return null;
    }
    Unit sold = unit(pack.pack());
    if (sold.dimension() != unit(quantity).dimension()) {
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_DIMENSION,
              pack.origin() == Pack.Origin.REQUEST ? pack.pointer() + "/pack" : "",
              pack.pack().text(),
              quantity.text(),
              "`"
                  + item
                  + "` is used by "
                  + unit(quantity).dimension()
                  + ", its pack is of "
                  + sold.dimension()));
    }
    double size = amount(pack.pack());
    return size > 0 ? new Offer(pack, size) : null;
  }

  /** A measured quantity in the canonical unit of what it measures. */
  public static double amount(Quantity quantity) {
    return unit(quantity).toCanonical(quantity.amount());
  }

  private static Unit unit(Quantity quantity) {
    return Units.standard().unit(quantity.unit(), Measures.METRIC);
  }
}
