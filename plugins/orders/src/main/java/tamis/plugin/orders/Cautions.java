package tamis.plugin.orders;

import java.util.List;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Notes;

/** Who works by a sheet is told of what can hurt, in general words. */
final class Cautions {
  private Cautions() {}

  static void of(List<Making> order, Notes notes) {
    if (order.stream().anyMatch(Cautions::boilsSugar)) {
      notes.caution(
          "hot-syrup",
          "",
          "boiling sugar sticks to skin and burns deeply: long sleeves, a clear floor, cold water"
              + " within reach");
    }
    if (order.stream().anyMatch(Cautions::hasEgg)) {
      notes.caution(
          "egg",
          "",
          "egg that is not fully cooked carries a risk, more so for people who are very young, old,"
              + " pregnant or ill; local food codes and the advice of licensed practice go before"
              + " this sheet");
    }
    notes.caution(
        "allergens-as-documented",
        "",
        "allergens are those that the ingredients' documents name; cross-contact in this bakery is"
            + " not known to them, and local rules say how customers are told");
  }

  private static boolean boilsSugar(Making making) {
    return making.formula().stages().stream()
        .anyMatch(
            stage ->
                stage.target() != null && stage.target().kind() == StageTarget.Kind.SUGAR_SYRUP);
  }

  private static boolean hasEgg(Making making) {
    return making.one().root().lines().stream()
        .anyMatch(line -> "egg".equals(line.ingredient().kind()));
  }
}
