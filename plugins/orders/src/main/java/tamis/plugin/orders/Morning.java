package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.price.Purchases;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out one sheet: gathers the orders, settles the batches, then what follows from them. */
final class Morning {
  /** Parts of an egg that are whole but for rounding. */
  private static final double WHOLE = 1e-6;

  private static final int MOST_BATCHES = 10_000;

  private final Production.Input input;
  private final Kitchen kitchen;
  private final Notes notes = new Notes();
  private final Faults faults = new Faults();
  private final Map<Formula, Making> makings = new LinkedHashMap<>();
  private final Map<FormulaRef, Making> byReference = new LinkedHashMap<>();
  private final Map<Order, Group> groups = new LinkedHashMap<>();

  /** What makes two order lines equal. */
  record Order(FormulaRef formula, Size size) {}

  /** Equal order lines. */
  static final class Group {
    private final Order order;
    private final Making making;
    private final double times;
    private final List<Integer> entries = new ArrayList<>();
    private long count;

    Group(Order order, Making making, double times) {
      this.order = order;
      this.making = making;
      this.times = times;
    }

    Order order() {
      return order;
    }

    Making making() {
      return making;
    }

    /** How many times the formula one of them is. */
    double times() {
      return times;
    }

    List<Integer> entries() {
      return entries;
    }

    long count() {
      return count;
    }
  }

  Morning(Production.Input input, Kitchen kitchen) {
    this.input = input;
    this.kitchen = kitchen;
  }

  Answer<Production.Result> answer() {
    for (int i = 0; i < input.orders().size(); i++) {
      gather(input.orders().get(i), i);
    }
    Stock stock = Stock.of(input.stock(), kitchen, this::making, notes, faults);
    Timetable.check(input, kitchen, faults);
    List<Making> all = faults.isEmpty() ? settled() : List.of();
    faults.refuseIfAny();
    List<Making> order = all.stream().filter(making -> making.needed() > 0).toList();
    remarkOnFormulas();
    Cautions.of(order, notes);
    Purchases purchases = DayCost.purchases(input, kitchen);
    DayBill bill = DayBill.of(order, stock, purchases, kitchen);
    DayCost cost = DayCost.of(input, bill, purchases, all, groups.values(), kitchen, notes);
    List<Sheet.Ordered> ordered = ordered(cost);
    return Answer.of(
        new Production.Result(
            Rows.batches(order),
            Rows.made(order),
            bill.used(),
            bill.byProducts(),
            cost.purchases(),
            stock.left(all),
            LeftOvers.of(input, all, kitchen, notes),
            ordered,
            cost.total(),
            cost.spare(),
            cost.stock(),
            Timetable.of(input, order, kitchen, notes),
            cost.missing(),
            cost.incomplete(ordered.size())),
        notes);
  }

  /** What is said of a formula belongs to the first order of it. */
  private void remarkOnFormulas() {
    Set<Making> told = new HashSet<>();
    for (Group group : groups.values()) {
      if (told.add(group.making)) {
        String at = "/orders/" + group.entries.get(0) + "/formula";
        for (Remark one : group.making.one().remarks()) {
          notes.add(new Remark(one.kind(), one.code(), one.message(), at));
        }
      }
    }
  }

  private void gather(OrderLine line, int place) {
    Order order = new Order(line.formula(), line.size());
    @Nullable Group group = groups.get(order);
    if (group == null) {
      group = faults.gather("/orders/" + place, () -> group(order));
      if (group == null) {
        return;
      }
      groups.put(order, group);
    }
    group.entries.add(place);
    group.count += line.number();
    group.making.order(group.times() * line.number());
    group.making.inSize(order.size(), group.times());
  }

  private Group group(Order order) {
    @Nullable Double told = order.size().times(kitchen.formula(order.formula()));
    if (told != null) {
      Making making = making(order.formula());
      return new Group(order, making, told / making.one().factor());
    }
    Batch one = order.size().batch(order.formula(), kitchen);
    Making making = making(order.formula());
    return new Group(order, making, one.factor() / making.one().factor());
  }

  /** The formula's place in the day, with all that it is made of. */
  private Making making(FormulaRef reference) {
    @Nullable Making named = byReference.get(reference);
    if (named != null) {
      return named;
    }
    Formula formula = kitchen.formula(reference);
    @Nullable Making known = makings.get(formula);
    if (known == null) {
      Batch one = kitchen.batch(reference, Times.of(formula, 1));
      known = new Making(reference, one);
      makings.put(formula, known);
      for (Part part : one.root().parts()) {
        Making inner = making(FormulaRef.of(part.formula()));
        known.uses(inner, part.factor() / one.factor() / inner.one().factor());
      }
    }
    byReference.put(reference, known);
    return known;
  }

  /** Batches from the orders down to their parts; given back parts first. */
  private List<Making> settled() {
    List<Making> order = Making.inOrder(List.copyOf(makings.values()));
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

  private List<Sheet.Ordered> ordered(DayCost cost) {
    Map<FormulaRef, Declared> declared = new LinkedHashMap<>();
    List<Sheet.Ordered> rows = new ArrayList<>();
    int place = 0;
    for (Group group : groups.values()) {
      FormulaRef formula = group.order().formula();
      if (!declared.containsKey(formula)) {
        declared.put(formula, declared(formula, group));
      }
      Declared allergens = Objects.requireNonNull(declared.get(formula));
      @Nullable Double portions = portions(group);
      rows.add(
          new Sheet.Ordered(
              group.making().name(),
              group.making().formula().name(),
              group.order().size().words(),
              group.count(),
              List.copyOf(group.entries()),
              group.making().finishedGrams() * group.times() * group.count(),
              portions == null ? null : (Double) (portions * group.count()),
              cost.ofOrder(place++),
              allergens.contains(),
              allergens.mayContain()));
    }
    return rows;
  }

  private Declared declared(FormulaRef formula, Group group) {
    try {
      return Declared.of(formula, input.regimeOrEu(), kitchen);
    } catch (Refusal refusal) {
      throw refusal.under("/orders/" + group.entries().get(0));
    }
  }

  private static @Nullable Double portions(Group group) {
    if (group.order().size().portions() != null) {
      return group.order().size().portions();
    }
    @Nullable Double written = group.making().formula().yieldOrNothing().portions();
    return written == null
        ? null
        : (Double) (written * group.times() * group.making().one().factor());
  }
}
