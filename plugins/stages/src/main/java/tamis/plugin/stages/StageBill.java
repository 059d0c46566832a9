package tamis.plugin.stages;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Stage;
import tamis.engine.quantity.Spread;
import tamis.engine.spi.Kitchen;

/**
 * What is in the bowl at a stage of a formula: the lines of the stage and of all stages before it,
 * and lines that name no stage.
 *
 * @param made what it is made of
 * @param kilograms how much
 */
record StageBill(Makeup made, double kilograms) {

  static @Nullable StageBill of(StageCheck.Input input, Kitchen kitchen) {
    StageBatch told = input.batch();
    if (told != null) {
      Makeup made = Makeup.of(told.ingredient(), told.composition(), null, told.fat(), kitchen);
      return new StageBill(made, told.mass().grams() / 1000);
    }
    if (input.formula() == null || input.stage() == null) {
      return null;
    }
    Batch batch = kitchen.batch(input.formula(), input.to());
    Set<String> stages = before(batch.root().formula(), input.stage());
    List<Batch.BillRow> rows = new ArrayList<>();
    double grams = 0;
    for (Batch.BatchLine line : batch.lines()) {
      @Nullable String stage = stageOf(line, batch.root().formula());
      if (stage == null || stages.contains(stage)) {
        Spread left = line.grams().times(line.remains());
        rows.add(new Batch.BillRow(line.ingredient(), line.grams(), left, false));
        grams += left.typical();
      }
    }
    return grams == 0 ? null : new StageBill(Makeup.of(rows), grams / 1000);
  }

  /** The stage of the formula's own line, also for what lies deeper in a sub-formula. */
  private static @Nullable String stageOf(Batch.BatchLine line, Formula formula) {
    String[] steps = line.path().split("/");
    int index = Integer.parseInt(steps[2]);
    return formula.lines().get(index).stage();
  }

  private static Set<String> before(Formula formula, String stage) {
    Set<String> found = new HashSet<>();
    Deque<String> open = new ArrayDeque<>(List.of(stage));
    while (!open.isEmpty()) {
      String next = open.pop();
      if (found.add(next)) {
        for (Stage one : formula.stages()) {
          if (one.id().equals(next)) {
            open.addAll(one.after());
          }
        }
      }
    }
    return found;
  }
}
