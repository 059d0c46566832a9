package tamis.plugin.timeline;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.formula.Stage;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.TimeSpan;

/** A net of three, and a cream whose foam and syrup meet; both need nothing stored. */
final class TimelineExamples {
  private TimelineExamples() {}

  static List<Timeline.Input> all() {
    LocalDateTime finish = LocalDateTime.of(2026, 5, 1, 9, 0);
    List<Activity> net =
        List.of(
            activity("A", 4, List.of()),
            activity("B", 6, List.of("A")),
            activity("C", 3, List.of("A")));
    List<Wanted> cream = List.of(Wanted.of(WantedFormula.of(FormulaRef.of(cream()), null, null)));
    return List.of(
        input(net, List.of(), finish, List.of()),
        input(List.of(), cream, finish, List.of()),
        input(List.of(), cream, finish, List.of(new Delay("foam", null, 6))));
  }

  private static Timeline.Input input(
      List<Activity> activities,
      List<Wanted> formulas,
      @Nullable LocalDateTime finish,
      List<Delay> delays) {
    return new Timeline.Input(
        activities, formulas, finish, null, null, null, 1, List.of(), List.of(), delays, null);
  }

  private static Activity activity(String id, double minutes, List<String> after) {
    return new Activity(id, null, minutes, after, List.of(), null, null, null);
  }

  private static Formula cream() {
    StageTarget hot =
        new StageTarget(
            StageTarget.Kind.SUGAR_SYRUP,
            StageTarget.Measure.TEMPERATURE,
            "116 °C",
            "121 °C",
            null);
    return new Formula(
        "meringue-example",
        "Cooked meringue",
        Measures.METRIC,
        List.of(
            line("egg-white", "150 g", "foam"),
            line("sugar-granulated", "300 g", "syrup"),
            line("water", "90 g", "syrup")),
        new Yield(12.0, null, null, null, null, null, List.of(), null, null),
        List.of(
            stage("syrup", "Cook the syrup", "stove", 12, true, hot, List.of(), List.of()),
            stage("foam", "Whip the whites", "mixer", 8, false, null, List.of(), List.of("syrup")),
            stage(
                "pour",
                "Pour and whip cool",
                "mixer",
                10,
                true,
                null,
                List.of("syrup", "foam"),
                List.of())),
        List.of(),
        List.of(),
        List.of(),
        null,
        null);
  }

  private static Line line(String ingredient, String quantity, String stage) {
    return new Line(
        IngredientRef.parse(ingredient),
        null,
        Quantity.parse(quantity),
        null,
        null,
        stage,
        null,
        null,
        null);
  }

  private static Stage stage(
      String id,
      String title,
      String station,
      double minutes,
      boolean hands,
      @Nullable StageTarget target,
      List<String> after,
      List<String> meets) {
    return new Stage(
        id,
        title,
        station,
        TimeSpan.ofMinutes(minutes),
        hands,
        target,
        null,
        after,
        meets,
        null,
        null,
        null);
  }
}
