package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.ArrayList;
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
import tamis.engine.spi.Kitchen;

/** Inputs as a caller writes them, for all tests of the plugin. */
final class Timelines {
  static final Kitchen KITCHEN =
      new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(new TimelinePlugin())));

  private Timelines() {}

  static Answer<Timeline.Result> answer(Map<String, ?> input) {
    return answer(input, KITCHEN);
  }

  static Answer<Timeline.Result> answer(Map<String, ?> input, Kitchen kitchen) {
    Timeline.Input read =
        new RecordReader(kitchen, Limits.usual()).read(Timeline.Input.class, input);
    return new Timeline().calculate(read, kitchen);
  }

  static Timeline.Result result(Map<String, ?> input) {
    return answer(input).result();
  }

  static List<Fault> faults(Map<String, ?> input) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> answer(input));
    return refusal == null ? List.of() : refusal.faults();
  }

  /** A map of names and values in turn. */
  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  static Map<String, Object> with(Map<String, ?> input, Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>(input);
    map.putAll(map(namesAndValues));
    return map;
  }

  /** A document of some water and these stages. */
  static Map<String, Object> formula(String id, List<Map<String, Object>> stages) {
    Map<String, Object> water = map("ingredient", "water", "quantity", "1 kg");
    return map(
        "id",
        id,
        "title",
        id,
        "measures",
        "metric",
        "lines",
        List.of(water),
        "yield",
        map("pieces", 60),
        "stages",
        stages);
  }

  static Map<String, Object> stage(
      String id, String station, Object minutes, boolean hands, Object... more) {
    Map<String, Object> stage =
        map("id", id, "station", station, "duration", minutes + " min", "hands", hands);
    stage.putAll(map(more));
    return stage;
  }

  /** A cream whose foam and syrup meet, as a caller's own document. */
  static Map<String, Object> cream() {
    List<Map<String, Object>> stages = new ArrayList<>();
    Map<String, Object> hot =
        map("kind", "sugar-syrup", "measure", "temperature", "low", "116 °C", "high", "121 °C");
    stages.add(stage("syrup", "stove", 12, true, "target", hot));
    stages.add(stage("foam", "mixer", 5, false, "meets", List.of("syrup")));
    stages.add(stage("pour", "mixer", 10, true, "after", List.of("syrup", "foam")));
    return formula("cream", stages);
  }

  static Step step(Timeline.Result result, String stage) {
    return result.steps().stream()
        .filter(step -> stage.equals(step.stage()) || stage.equals(step.id()))
        .findFirst()
        .orElseThrow();
  }
}
