package tamis.plugin.scaling;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;

/** Formulas as a caller writes them, and what they come to at a size. */
final class Scaled {
  private Scaled() {}

  static final Map<String, Object> CREAM =
      formula("cream", "milk-whole 3 g; egg-yolk 6 each; sugar-granulated 100 g; salt 0.04 g");

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  /** {@code bread-flour 1000 g; water 65 %} as a document that gives ten portions. */
  static Map<String, Object> formula(String id, String lines) {
    List<Object> read = new ArrayList<>();
    for (String line : lines.split("; ")) {
      String[] both = line.split(" ", 2);
      boolean part = both[0].startsWith(">");
      read.add(
          map(
              part ? "formula" : "ingredient",
              part ? both[0].substring(1) : both[0],
              "quantity",
              both[1]));
    }
    return map("id", id, "lines", read, "measures", "us", "yield", map("portions", 10.0));
  }

  /** With a cream on the shelf, beside what every kitchen has. */
  static Pantry kitchen() {
    RecordReader reader = new RecordReader(References.UNCHECKED, Limits.usual());
    Formula cream = reader.read(Formula.class, CREAM);
    return new Pantry(
        Shelf.of(List.of(cream), List.of()), Pantry.Fittings.of(List.of(new ScalingPlugin())));
  }

  static Answer<Scaling.Result> scaled(Object formula, Object... more) {
    Map<String, Object> input = map("formula", formula);
    input.putAll(map(more));
    Pantry kitchen = kitchen();
    RecordReader reader = new RecordReader(kitchen, Limits.usual());
    return new Scaling().calculate(reader.read(Scaling.Input.class, input), kitchen);
  }

  static Answer<Scaling.Result> scaled(String lines) {
    return scaled(formula("cake", lines));
  }
}
