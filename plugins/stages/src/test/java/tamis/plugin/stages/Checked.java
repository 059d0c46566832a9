package tamis.plugin.stages;

import java.util.List;
import java.util.Map;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;

/** A stage and its readings as a caller writes them. */
final class Checked {
  private Checked() {}

  static final Map<String, Object> SOFT_BALL =
      Map.of("kind", "sugar-syrup", "low", "112 °C", "high", "116 °C");

  static Map<String, Object> at(double minute, String temperature) {
    return Map.of("minute", minute, "temperature", temperature);
  }

  static StageCheck.Result checked(Map<String, Object> target, Map<?, ?>... readings) {
    return result(Map.of("target", target, "readings", List.of(readings)));
  }

  static StageCheck.Result result(Map<String, ?> input) {
    return answer(input).result();
  }

  static Answer<StageCheck.Result> answer(Map<String, ?> input) {
    Pantry kitchen = new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(new StagesPlugin())));
    RecordReader reader = new RecordReader(kitchen, Limits.usual());
    return new StageCheck().calculate(reader.read(StageCheck.Input.class, input), kitchen);
  }
}
