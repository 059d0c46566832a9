package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.plugin.nutrition.Nutrition.LabelLine;

/** A label line by line, and figures that are given and only printed. */
final class LabelLines {
  private LabelLines() {}

  /** The rounding rules alone, for figures that are given. */
  static Nutrition.Result ofGiven(Nutrition.Input input, Notes notes) {
    Label label = new Label(input.regime());
    Faults faults = new Faults();
    Map<LabelFigure, Declared> declared = new EnumMap<>(LabelFigure.class);
    input
        .declare()
        .forEach(
            (figure, value) -> {
              @Nullable Row rule = label.rule(figure);
              if (rule == null) {
                faults.add(notShown(figure, input.regime(), label));
              } else {
                declared.put(
                    figure, label.declared(rule, value, value, notes, "/declared/" + figure));
              }
            });
    faults.refuseIfAny();
    return new Nutrition.Result(
        input.regime(),
        null,
        null,
        null,
        null,
        null,
        null,
        null,
        input.regime().isAmerican() ? "a serving" : "100 g",
        declared,
        Map.of(),
        of(label, declared, Map.of(), false),
        Map.of(),
        List.of(),
        List.of());
  }

  private static Fault notShown(LabelFigure figure, LabelRegime regime, Label label) {
    return new Fault(
        FaultCode.NOT_ALLOWED,
        "/declare/" + figure,
        figure.toString(),
        String.join(", ", label.figures().stream().map(LabelFigure::toString).toList()),
        "a label of the " + regime + " does not show " + figure);
  }

  /** The lines in their order; {@code whole} if mandatory ones stand there though not known. */
  static List<LabelLine> of(
      Label label,
      Map<LabelFigure, Declared> declared,
      Map<LabelFigure, Declared> portion,
      boolean whole) {
    List<LabelLine> lines = new ArrayList<>();
    for (LabelFigure figure : label.figures()) {
      @Nullable Row rule = label.rule(figure);
      @Nullable Declared one = declared.get(figure);
      @Nullable Declared other = portion.get(figure);
      boolean mandatory = label.isMandatory(figure);
      if (rule != null && (mandatory ? whole || one != null : one != null && one.complete())) {
        lines.add(
            new LabelLine(
                figure,
                rule.text("name"),
                one == null ? "not known" : one.text(),
                other == null ? null : other.text(),
                one == null ? null : one.percent(),
                mandatory));
      }
    }
    return lines;
  }
}
