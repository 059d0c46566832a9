package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.ShelfLife;
import tamis.engine.formula.StageTarget;
import tamis.engine.formula.Yield;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.spi.Kitchen;

/** What is over, in stock too, and which cakes it would cover if its density as spread is known. */
final class LeftOvers {
  private static final String USUAL_COAT = "5 mm";
  private static final double HOURS_PER_DAY = 24;
  private static final Set<StageTarget.Kind> SPREADS =
      Set.of(StageTarget.Kind.CREAM, StageTarget.Kind.CUSTARD, StageTarget.Kind.CHOCOLATE);

  private LeftOvers() {}

  static List<Sheet.Over> of(
      Production.Input input, List<Making> order, Kitchen kitchen, Notes notes) {
    List<Sheet.Over> over = new ArrayList<>();
    for (Making making : order) {
      double grams = (making.spare() + making.leftInStock()) * making.finishedGrams();
      if (grams > 0) {
        over.add(
            new Sheet.Over(making.name(), grams, covers(making, grams, input, kitchen, notes)));
        List<String> lives = making.formula().shelfLife().stream().map(LeftOvers::words).toList();
        notes.caution(
            "keeping-time",
            "",
            "`"
                + making.name()
                + (lives.isEmpty()
                    ? "` is over and tells no shelf life; cool it at once, use it soon, and follow"
                        + " local rules"
                    : "` is over; keep it no longer than its shelf life and local rules allow: "
                        + String.join(", ", lives)));
      }
    }
    return over;
  }

  private static String words(ShelfLife life) {
    double hours = life.keeps().minutes() / 60;
    String time =
        hours >= HOURS_PER_DAY
            ? Bounds.plain(Math.rint(hours / HOURS_PER_DAY * 10) / 10) + " days"
            : Bounds.plain(Math.rint(hours * 10) / 10) + " hours";
    return time.replaceFirst("^1 (day|hour)s$", "1 $1")
        + " at "
        + Bounds.plain(Math.rint(life.at().celsius() * 10) / 10)
        + " °C";
  }

  /** Whether a stage of it ends in something that is spread on cakes. */
  private static boolean isSpread(Making making) {
    return making.formula().stages().stream()
        .anyMatch(stage -> stage.target() != null && SPREADS.contains(stage.target().kind()));
  }

  private static List<Sheet.Cover> covers(
      Making making, double grams, Production.Input input, Kitchen kitchen, Notes notes) {
    Yield yield = making.formula().yieldOrNothing();
    if (yield.density() == null || !isSpread(making)) {
      return List.of();
    }
    String coat = input.coat() == null ? USUAL_COAT : input.coat().toString();
    Map<String, Object> asked =
        Written.map(
            "cream", Mass.ofGrams(grams).toString(),
            "density", yield.density().toString(),
            "top", coat,
            "side", coat,
            "between", coat);
    if (!input.cakes().isEmpty()) {
      asked.put("cakes", input.cakes().stream().map(Written::of).toList());
    }
    try {
      return Found.of(kitchen.calculate("cream-reach", asked).result()).list("covers").stream()
          .map(
              one ->
                  new Sheet.Cover(
                      one.textOr("cake", ""),
                      one.numberOr("cakes", 0),
                      (int) one.numberOr("wholeCakes", 0)))
          .filter(one -> one.wholeCakes() > 0)
          .toList();
    } catch (Refusal refusal) {
      String why = refusal.faults().get(0).message();
      notes.remark(
          "cover-not-known",
          "/cakes",
          "what `" + making.name() + "` would cover is not told: " + why);
      return List.of();
    }
  }
}
