package tamis.plugin.costing;

import java.util.List;
import java.util.Locale;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.price.Pack;
import tamis.engine.price.PricedBill;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** What published lists say is left of produce when it is trimmed; they differ by some points. */
final class ProduceYields {
  static final Table TABLE =
      TableReader.read(
          ProduceYields.class,
          "/tamis/plugin/costing/produce-yields.csv",
          "Edible part of produce as purchased, by published lists",
          List.of("ingredient", "list"));

  private ProduceYields() {}

  /** Tells of fruit and vegetables whose price says no yield; nothing is taken from the lists. */
  static void remark(List<PricedBill.Row> bill, Notes notes) {
    for (int i = 0; i < bill.size(); i++) {
      PricedBill.Row row = bill.get(i);
      if (row.offer() != null && row.boughtAs() == null && isUnsaid(row.offer().pack())) {
        remark(row.ingredient(), "/lines/" + i + "/purchasedGrams", notes);
      }
    }
  }

  private static boolean isUnsaid(Pack pack) {
    return !pack.yieldSaid();
  }

  private static void remark(Ingredient ingredient, String pointer, Notes notes) {
    List<Row> rows =
        TABLE.rows().stream()
            .filter(row -> row.text("ingredient").equals(ingredient.id()))
            .toList();
    if (rows.isEmpty()) {
      return;
    }
    double low = rows.stream().mapToDouble(row -> row.number("yield_percent")).min().orElse(0);
    double high = rows.stream().mapToDouble(row -> row.number("yield_percent")).max().orElse(0);
    rows.forEach(row -> notes.cite(row, pointer));
    notes.estimate(
        "yield-not-said",
        "/prices",
        String.format(
            Locale.ROOT,
            "the price of `%s` says no yield, so all that is bought is taken as used; published"
                + " lists have %s%.0f %% (%s)",
            ingredient.id(),
            low < high ? String.format(Locale.ROOT, "%.0f to ", low) : "",
            high,
            rows.get(0).text("preparation")));
  }
}
