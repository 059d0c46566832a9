package tamis.engine.formula;

import static tamis.engine.formula.Card.map;

import java.util.Map;

/** What the tests of sizes make, and how they write a size. */
final class Sizes {
  private Sizes() {}

  /** 100 g of flour and 100 g of butter: what is made of it is easily seen. */
  static Card sand() {
    return Card.of("sand", "100 g all-purpose-flour", "100 g butter-unsalted");
  }

  static double factor(Object formula, Object... to) {
    return new Bench().batch(formula, to).factor();
  }

  static Bench eclairs() {
    return Bench.with(
        Card.of("eclairs", "200 g >choux", "400 g >cream", "50 g egg"),
        Card.of("choux", "100 g egg", "100 g all-purpose-flour"),
        Card.of("cream", "300 g milk-whole", "100 g sugar-granulated"));
  }

  /** A round tin that holds exactly one litre: 10 cm high over 100 cm². */
  static Map<String, Object> litre() {
    return map("shape", "square", "side", "10 cm", "height", "10 cm");
  }

  static Map<String, Object> pan(Object... namesAndValues) {
    Map<String, Object> pan = map("pan", litre());
    pan.putAll(map(namesAndValues));
    return pan;
  }

  static Object have(String kind, String name, String quantity) {
    return map(kind, name, "quantity", quantity);
  }
}
