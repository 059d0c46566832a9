package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Money;
import tamis.engine.record.PlainValues;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.trial.Trial;

/** What discarded trials cost, as `cost` works it out. */
final class LostCost {
  private static final String COST = "cost";
  private static final String AT = "/trials";

  private final TrialBook book;
  private final Kitchen kitchen;
  private final Notes notes;

  LostCost(TrialBook book, Kitchen kitchen, Notes notes) {
    this.book = book;
    this.kitchen = kitchen;
    this.notes = notes;
  }

  Lost lost() {
    List<Lost.LostTrial> lost = new ArrayList<>();
    @Nullable Money total = null;
    int unknown = 0;
    for (Trial trial : book.trials()) {
      if (trial.result() != Trial.Result.DISCARDED) {
        continue;
      }
      @Nullable Money cost = cost(trial);
      lost.add(new Lost.LostTrial(trial.id(), cost));
      if (cost != null && (total == null || total.currency().equals(cost.currency()))) {
        total = total == null ? cost : total.plus(cost);
      } else {
        unknown++;
      }
    }
    if (unknown > 0) {
      notes.remark(
          "lost-not-known",
          AT,
          "of "
              + Words.many(lost.size(), "discarded trial")
              + ", "
              + unknown
              + " are not in the cost of what was lost");
    } else if (total != null) {
      notes.estimate(
          "lost-as-written",
          AT,
          "what was lost is worked out from the formula and from prices as they are now");
    }
    return new Lost(total, lost, unknown);
  }

  private @Nullable Money cost(Trial trial) {
    Map<String, Object> question = new LinkedHashMap<>();
    question.put("formula", trial.formula().toString());
    if (trial.to() != null) {
      question.put("to", PlainValues.of(trial.to()));
    }
    try {
      @Nullable Answer<?> answer = Asked.of(kitchen, COST, question);
      if (answer == null) {
        notes.remark(
            "cost-not-loaded",
            AT,
            "no calculation `cost` is loaded, so what was lost is not known");
        return null;
      }
      if (Asked.value(answer.result(), "total") instanceof Money money) {
        return money;
      }
      notes.remark("lost-not-priced", AT, "`cost` gives no total for " + trial.formula());
    } catch (Refusal refusal) {
      notes.remark(
          "lost-not-priced", AT, "the cost of trial `" + trial.id() + "`: " + refusal.getMessage());
    }
    return null;
  }
}
