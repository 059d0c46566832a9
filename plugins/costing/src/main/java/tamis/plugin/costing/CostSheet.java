package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Packaging;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Notes;
import tamis.engine.price.Offer;
import tamis.engine.price.Pack;
import tamis.engine.price.PricedBill;
import tamis.engine.price.Purchases;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Kitchen;

/** What a batch uses, with the packs it is bought in. */
final class CostSheet {
  /** Items that are whole but for the rounding of a product. */
  private static final double HARDLY_ANY = 1e-9;

  private final Map<Ingredient, Batch.BillRow> bill = new LinkedHashMap<>();
  private final List<Item> items = new ArrayList<>();
  private final PricedBill priced;

  /** A packaging item, and how many of it. */
  record Item(Packaging packaging, double count, @Nullable Offer offer) {
    @Nullable BigDecimal cost() {
      return offer == null ? null : offer.cost(count);
    }
  }

  private CostSheet(Batch batch, Purchases purchases, Kitchen kitchen, Notes notes, Faults faults) {
    Map<Ingredient, Double> grams = new LinkedHashMap<>();
    for (Batch.BillRow row : batch.bill()) {
      bill.put(row.ingredient(), row);
      grams.put(row.ingredient(), row.grams().typical());
    }
    @Nullable PricedBill found =
        faults.gather("", () -> PricedBill.of(grams, purchases, kitchen::ingredient, notes));
    this.priced = found == null ? new PricedBill(List.of()) : found;
    batch.root().formula().packaging().forEach(one -> pack(one, batch, purchases, notes, faults));
  }

  static CostSheet of(Batch batch, List<Pack> given, Kitchen kitchen, Notes notes, Faults faults) {
    Purchases purchases = Purchases.of(given, kitchen.prices(), kitchen::ingredient);
    refuseUnknown(given, batch, kitchen, faults);
    return new CostSheet(batch, purchases, kitchen, notes, faults);
  }

  /**
   * A price of what is neither a food nor packaging here is a slip, not a price to leave unused.
   */
  private static void refuseUnknown(List<Pack> given, Batch batch, Kitchen kitchen, Faults faults) {
    for (Pack pack : given) {
      boolean item =
          batch.root().formula().packaging().stream()
              .anyMatch(one -> one.item().equalsIgnoreCase(pack.item().strip()));
      if (!item) {
        try {
          kitchen.ingredient(new IngredientRef(pack.item()));
        } catch (Refusal unknown) {
          faults.addAll(unknown, pack.pointer() + "/ingredient");
        }
      }
    }
  }

  private void pack(
      Packaging packaging, Batch batch, Purchases purchases, Notes notes, Faults faults) {
    if (!packaging.quantity().isMeasured()) {
      notes.remark(
          "packaging-not-counted",
          "/formula",
          "`" + packaging.item() + "` is used \"" + packaging.quantity() + "\" and is not costed");
      return;
    }
    double exact = Purchases.amount(packaging.quantity()) * batch.factor();
    boolean counted = packaging.quantity().dimension() == Dimension.COUNT;
    double count = counted ? Math.ceil(exact - HARDLY_ANY) : exact;
    if (counted && count - exact > HARDLY_ANY) {
      notes.remark(
          "whole-packaging",
          "/to",
          "`" + packaging.item() + "` is counted in whole ones: " + (long) count);
    }
    @Nullable Offer offer =
        faults.gather("", () -> purchases.ofItem(packaging.item(), packaging.quantity()));
    items.add(new Item(packaging, count, offer));
  }

  PricedBill priced() {
    return priced;
  }

  List<Item> items() {
    return items;
  }

  boolean isAsNeeded(Ingredient ingredient) {
    Batch.@Nullable BillRow row = bill.get(ingredient);
    return row != null && row.asNeeded() && row.grams().typical() == 0;
  }

  /** Money that is used here. */
  List<Money> used() {
    return offers().stream().map(Offer::money).toList();
  }

  private List<Offer> offers() {
    List<Offer> used = new ArrayList<>();
    for (PricedBill.Row row : priced.rows()) {
      if (row.offer() != null && row.grams() > 0) {
        used.add(row.offer());
      }
    }
    for (Item item : items) {
      if (item.offer() != null) {
        used.add(item.offer());
      }
    }
    return used;
  }

  /** What there is no price of, or one of 0; says which is which. */
  List<String> missing(Notes notes) {
    Offer.remarkOnCoins(offers(), notes);
    List<String> missing = new ArrayList<>();
    List<String> free = new ArrayList<>();
    for (PricedBill.Row row : priced.rows()) {
      note(row.ingredient().id(), row.grams() > 0, row.offer(), missing, free);
    }
    items.forEach(
        item -> note(item.packaging().item(), item.count() > 0, item.offer(), missing, free));
    if (!missing.isEmpty()) {
      notes.remark(
          "price-missing",
          "/prices",
          "the cost is known in part only: there is no price of " + String.join(", ", missing));
    }
    if (!free.isEmpty()) {
      notes.remark(
          "price-zero",
          "/prices",
          "the cost is known in part only: the price is 0 of " + String.join(", ", free));
      missing.addAll(free);
    }
    List<String> unweighed =
        bill.keySet().stream().filter(this::isAsNeeded).map(Ingredient::id).toList();
    if (!unweighed.isEmpty()) {
      notes.remark(
          "as-needed-not-costed",
          "/formula",
          "\"as needed\" is no amount, so these are not in the cost: "
              + String.join(", ", unweighed));
    }
    return missing;
  }

  private static void note(
      String name, boolean used, @Nullable Offer offer, List<String> missing, List<String> free) {
    if (used && offer == null) {
      missing.add(name);
    } else if (used && offer != null && offer.money().amount().signum() == 0) {
      free.add(name);
    }
  }

  /** Whether anything here goes by this id or name. */
  List<String> names() {
    List<String> names = new ArrayList<>();
    for (PricedBill.Row row : priced.rows()) {
      names.add(row.ingredient().id());
      if (row.boughtAs() != null) {
        names.add(row.boughtAs().id());
      }
    }
    items.forEach(item -> names.add(item.packaging().item()));
    return names;
  }
}
