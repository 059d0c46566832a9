package tamis.plugin.intake;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import tamis.engine.formula.Formula;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Answer;

/** What is answered to an input of one form. */
final class Sent {
  private Sent() {}

  static Pantry kitchen() {
    return new Pantry(Shelf.empty(), Pantry.Fittings.of(List.of(new IntakePlugin())));
  }

  static Answer<Intake.Result> answer(String form, Object source, Object... more) {
    return answer(kitchen(), form, source, more);
  }

  /**
   * @param more names of other inputs, each with its value behind it
   */
  static Answer<Intake.Result> answer(Pantry kitchen, String form, Object source, Object... more) {
    Map<String, Object> input = new HashMap<>(Map.of(form, source));
    for (int i = 0; i < more.length; i += 2) {
      input.put((String) more[i], more[i + 1]);
    }
    Intake.Input read = new RecordReader(kitchen, Limits.usual()).read(Intake.Input.class, input);
    return new Intake().calculate(read, kitchen);
  }

  static Intake.Result read(String form, Object source, Object... more) {
    return answer(form, source, more).result();
  }

  static Formula formula(Intake.Result result) {
    return Objects.requireNonNull(result.formula());
  }
}
