package tamis.plugin.orders;

import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;

/** Settles in which batches each formula of the day is made, and says what is not as wished. */
final class Batches {
  /** Parts of an egg that are whole but for rounding. */
  private static final double WHOLE = 1e-6;

  private static final int MOST_BATCHES = 10_000;

  private final Production.Input input;
  private final Notes notes;
  private final Faults faults;

  Batches(Production.Input input, Notes notes, Faults faults) {
    this.input = input;
    this.notes = notes;
    this.faults = faults;
  }

  /** Batches from the orders down to their parts; given back parts first. */
  List<Making> settle(Collection<Making> makings) {
    List<Making> order = Making.inOrder(List.copyOf(makings));
    Machines machines = new Machines(input.capacities());
    for (int i = order.size() - 1; i >= 0; i--) {
      Making making = order.get(i);
      double need = making.toMake();
      making.make(need > 0 ? plan(making, need, machines) : null);
    }
    return order;
  }

  private @Nullable BatchPlan plan(Making making, double need, Machines machines) {
    List<BatchPlan.Machine> choice = machines.of(making);
    double largest = choice.stream().mapToDouble(BatchPlan.Machine::most).max().orElse(0);
    if (need / largest > MOST_BATCHES) {
      faults.add(
          FaultCode.TOO_MANY,
          "/capacities",
          "`" + making.name() + "` would take more than " + MOST_BATCHES + " batches");
      return null;
    }
    double eggs = making.eggs();
    boolean whole = Boolean.TRUE.equals(input.wholeEggs()) && eggs > 0;
    @Nullable BatchPlan plan = BatchPlan.of(need, choice, whole ? 1 / eggs : 0);
    if (plan == null) {
      faults.add(
          new Fault(
              FaultCode.IMPOSSIBLE,
              "/capacities",
              making.name(),
              whole ? "room for a batch with one whole egg" : "a least that is not above the most",
              "no machine takes a batch of `"
                  + making.name()
                  + "`"
                  + (whole ? " with a whole egg in it" : "")));
      return null;
    }
    if (!whole && eggs > 0) {
      broken(making, plan, eggs);
    }
    if (!plan.best()) {
      notes.estimate(
          "not-proved-best",
          "/capacities",
          "the batches of `"
              + making.name()
              + "` are the best that were found; `gapGrams` is how much less could be over");
    }
    return plan;
  }

  private void broken(Making making, BatchPlan plan, double eggs) {
    boolean all =
        plan.loads().stream()
            .allMatch(
                load -> {
                  double broken = load.size() * eggs;
                  return Math.abs(broken - Math.rint(broken)) < WHOLE;
                });
    if (!all) {
      notes.remark(
          "part-of-an-egg",
          "/wholeEggs",
          "batches of `"
              + making.name()
              + "` break no whole number of eggs; say `wholeEggs` to make a little more");
    }
  }
}
