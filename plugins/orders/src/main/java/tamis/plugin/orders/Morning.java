package tamis.plugin.orders;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
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
  private final Production.Input input;
  private final Kitchen kitchen;
  private final Notes notes = new Notes();
  private final Faults faults = new Faults();
  private final Map<Formula, Making> makings = new LinkedHashMap<>();
  private final Map<FormulaRef, Making> byReference = new LinkedHashMap<>();
  private final Map<OrderGroup.Order, OrderGroup> groups = new LinkedHashMap<>();

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
    List<Making> all =
        faults.isEmpty() ? new Batches(input, notes, faults).settle(makings.values()) : List.of();
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
    for (OrderGroup group : groups.values()) {
      if (told.add(group.making())) {
        String at = "/orders/" + group.entries().get(0) + "/formula";
        for (Remark one : group.making().one().remarks()) {
          notes.add(new Remark(one.kind(), one.code(), one.message(), at));
        }
      }
    }
  }

  private void gather(OrderLine line, int place) {
    OrderGroup.Order order = new OrderGroup.Order(line.formula(), line.size());
    @Nullable OrderGroup group = groups.get(order);
    if (group == null) {
      group = faults.gather("/orders/" + place, () -> group(order));
      if (group == null) {
        return;
      }
      groups.put(order, group);
    }
    group.add(line, place);
  }

  private OrderGroup group(OrderGroup.Order order) {
    @Nullable Double told = order.size().times(kitchen.formula(order.formula()));
    if (told != null) {
      Making making = making(order.formula());
      return new OrderGroup(order, making, told / making.one().factor());
    }
    Batch one = order.size().batch(order.formula(), kitchen);
    Making making = making(order.formula());
    return new OrderGroup(order, making, one.factor() / making.one().factor());
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

  private List<Sheet.Ordered> ordered(DayCost cost) {
    Map<FormulaRef, Declared> declared = new LinkedHashMap<>();
    List<Sheet.Ordered> rows = new ArrayList<>();
    int place = 0;
    for (OrderGroup group : groups.values()) {
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

  private Declared declared(FormulaRef formula, OrderGroup group) {
    try {
      return Declared.of(formula, input.regimeOrEu(), kitchen);
    } catch (Refusal refusal) {
      throw refusal.under("/orders/" + group.entries().get(0));
    }
  }

  private static @Nullable Double portions(OrderGroup group) {
    if (group.order().size().portions() != null) {
      return group.order().size().portions();
    }
    @Nullable Double written = group.making().formula().yieldOrNothing().portions();
    return written == null
        ? null
        : (Double) (written * group.times() * group.making().one().factor());
  }
}
