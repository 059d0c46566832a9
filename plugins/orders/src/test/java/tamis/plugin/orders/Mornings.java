package tamis.plugin.orders;

import static tamis.plugin.orders.Shop.map;

import java.util.List;
import java.util.Map;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** A morning in the shop of cakes, and what is looked up in its sheet. */
final class Mornings {
  private Mornings() {}

  static Answer<Production.Result> asked(List<?> orders, Object... more) {
    Map<String, Object> input = map("orders", orders);
    input.putAll(map(more));
    Kitchen kitchen = Shop.ofCakes();
    RecordReader reader = new RecordReader((References) kitchen, Limits.usual());
    return new Production().calculate(reader.read(Production.Input.class, input), kitchen);
  }

  static double grams(Production.Result result, String ingredient) {
    return result.ingredients().stream()
        .filter(one -> one.ingredient().equals(ingredient))
        .mapToDouble(Sheet.Used::grams)
        .sum();
  }

  static Sheet.Made made(Production.Result result, String formula) {
    return result.made().stream()
        .filter(one -> one.formula().equals(formula))
        .findFirst()
        .orElseThrow();
  }
}
