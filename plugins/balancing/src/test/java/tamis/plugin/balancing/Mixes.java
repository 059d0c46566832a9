package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;

/** Mixes as a caller writes them, and what is looked up in the answer. */
final class Mixes {
  private Mixes() {}

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  static Map<String, Object> own(String name, Object... composition) {
    return map("name", name, "composition", map(composition));
  }

  static Map<String, Object> priced(String name, String price, Object... composition) {
    Map<String, Object> own = own(name, composition);
    own.put("pricePerKilogram", price);
    return own;
  }

  static Map<String, Object> bound(String property, Object... more) {
    Map<String, Object> bound = map("property", property);
    bound.putAll(map(more));
    return bound;
  }

  static Map<String, Object> withBounds(Map<String, Object> item, Object... bounds) {
    item.putAll(map(bounds));
    return item;
  }

  static List<Fault> faults(Object... input) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> balanced(input));
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }

  static double grams(Balancing.Result result, String ingredient) {
    return result.lines().stream()
        .filter(line -> line.ingredient().equals(ingredient))
        .findFirst()
        .orElseThrow()
        .grams();
  }

  static MixFigure figure(Balancing.Result result, String property) {
    return result.properties().stream()
        .filter(one -> one.property().equals(property))
        .findFirst()
        .orElseThrow();
  }

  static Answer<Balancing.Result> balanced(Object... input) {
    Pantry kitchen = new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(new BalancingPlugin())));
    RecordReader reader = new RecordReader(kitchen, Limits.usual());
    return new Balancing().calculate(reader.read(Balancing.Input.class, map(input)), kitchen);
  }
}
