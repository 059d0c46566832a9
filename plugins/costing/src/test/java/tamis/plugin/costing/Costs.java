package tamis.plugin.costing;

import static tamis.plugin.costing.Bench.formula;
import static tamis.plugin.costing.Bench.map;

import java.util.Map;
import tamis.engine.quantity.Money;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** The cost of a formula of the shop, as a caller asks for it. */
final class Costs {
  private Costs() {}

  static Answer<Cost.Result> asked(Object formula, Object... more) {
    Map<String, Object> input = map("formula", formula);
    input.putAll(map(more));
    Kitchen kitchen = Bench.shop();
    RecordReader reader = new RecordReader((References) kitchen, Limits.usual());
    return new Cost().calculate(reader.read(Cost.Input.class, input), kitchen);
  }

  static Money money(String text) {
    return Money.parse(text);
  }
}
