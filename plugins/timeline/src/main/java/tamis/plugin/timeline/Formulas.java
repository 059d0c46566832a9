package tamis.plugin.timeline;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;
import tamis.engine.spi.Kitchen;

/** Formulas as work: every stage of every part of every batch. */
final class Formulas {
  private final List<Wanted> wanted;
  private final Kitchen kitchen;
  private final Notes notes;
  private final Faults faults = new Faults();
  private final Work work = new Work();
  private final Map<String, Integer> batches = new HashMap<>();

  Formulas(List<Wanted> wanted, Kitchen kitchen, Notes notes) {
    this.wanted = wanted;
    this.kitchen = kitchen;
    this.notes = notes;
  }

  /**
   * @throws Refusal with the faults of all formulas
   */
  Work work() {
    for (int k = 0; k < wanted.size(); k++) {
      add(wanted.get(k), "/formulas/" + k);
    }
    faults.refuseIfAny();
    return work;
  }

  private void add(Wanted one, String at) {
    @Nullable WantedFormula object = one.object();
    @Nullable To to = object == null ? null : object.to();
    @Nullable Integer count = object == null ? null : object.count();
    @Nullable Batch batch = batch(one, to, at);
    if (batch == null) {
      return;
    }
    for (Remark remark : batch.remarks()) {
      notes.add(
          new Remark(
              remark.kind(), remark.code(), remark.message(), place(one, at, remark.pointer())));
    }
    int before = faults.size();
    int first = -1;
    for (int copy = 0; copy < (count == null ? 1 : count) && faults.size() == before; copy++) {
      int start = work.tasks().size();
      new PartStages(work, faults, notes, stagesAt(one, at), to)
          .add(batch.root(), label(batch, count));
      if (work.tasks().size() == start && faults.size() == before) {
        refuseNoStages(batch, stagesAt(one, at));
      } else if (first >= 0 && work.tasks().size() > start) {
        work.notBefore(first, start); // batches alike: any order is as good as this
      }
      first = start;
    }
  }

  private void refuseNoStages(Batch batch, String at) {
    faults.add(
        FaultCode.INCOMPLETE,
        at,
        "`" + batch.root().formula().name() + "` has no stages, so there is nothing to give times");
  }

  private @Nullable Batch batch(Wanted one, @Nullable To to, String at) {
    try {
      return kitchen.batch(one.formula(), to);
    } catch (Refusal refusal) {
      for (Fault fault : refusal.faults()) {
        String place = place(one, at, fault.pointer());
        faults.add(new Fault(fault.code(), place, fault.given(), fault.allowed(), fault.message()));
      }
      return null;
    }
  }

  /** Where the caller wrote what a batch speaks of as {@code /formula} or {@code /to}. */
  private static String place(Wanted one, String at, String pointer) {
    if (pointer.startsWith("/formula")) {
      boolean named = one.object() != null && one.object().formula() != null;
      return named ? at + pointer : at + pointer.substring("/formula".length());
    }
    return at + pointer;
  }

  /** Where the caller wrote what has stages: by name, or in the document. */
  private static String stagesAt(Wanted one, String at) {
    if (one.object() == null) {
      return at;
    }
    return one.object().formula() != null ? at + "/formula" : at + "/stages";
  }

  /** A name of this batch that no other has. */
  private String label(Batch batch, @Nullable Integer count) {
    @Nullable String id = batch.root().formula().id();
    String name = id == null ? "formula" : id;
    int number = batches.merge(name, 1, Integer::sum);
    boolean several = number > 1 || (count != null && count > 1) || isTwice(name);
    return several ? name + "/batch-" + number : name;
  }

  private boolean isTwice(String name) {
    return wanted.stream()
            .filter(
                one -> {
                  @Nullable String id =
                      one.formula().object() == null
                          ? one.formula().id()
                          : one.formula().object().id();
                  return name.equals(id == null ? "formula" : id);
                })
            .count()
        > 1;
  }
}
