package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Yield;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/**
 * What a portion of a batch is: what the caller says, else the serving by the amount customarily
 * eaten, else what the formula says it gives.
 *
 * @param serving by the amount customarily eaten, if a category is given
 * @param grams finished mass of a portion, or null if nothing tells it
 */
record Portions(@Nullable Serving serving, @Nullable Double grams) {

  static Portions of(Nutrition.Input input, Batch batch, Baked baked, Notes notes) {
    @Nullable Serving serving = serving(input, batch, baked, notes);
    return new Portions(serving, portion(input, batch, baked, serving));
  }

  private static @Nullable Serving serving(
      Nutrition.Input input, Batch batch, Baked baked, Notes notes) {
    if (input.category() == null) {
      return null;
    }
    @Nullable Row row = FigureTables.SERVINGS.row(input.category());
    if (row == null) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/category",
              input.category(),
              String.join(", ", FigureTables.SERVINGS.rows().stream().map(r -> r.key()).toList()),
              "no amount customarily eaten is known of `" + input.category() + "`"));
    }
    Yield yield = batch.root().formula().yieldOrNothing();
    @Nullable Double unit =
        yield.pieces() == null
            ? null
            : (Double) (baked.grams() / (yield.pieces() * batch.factor()));
    @Nullable Double density =
        yield.density() == null ? null : (Double) yield.density().gramsPerMillilitre();
    @Nullable Serving serving = Serving.of(row, unit, density);
    if (serving == null) {
      notes.remark(
          "serving-not-weighed",
          "/category",
          "the amount is "
              + row.text("measure")
              + "; it needs the density of the finished product");
    } else {
      notes.cite(row, "/serving");
    }
    return serving;
  }

  private static @Nullable Double portion(
      Nutrition.Input input, Batch batch, Baked baked, @Nullable Serving serving) {
    if (input.portion() != null) {
      return input.portion().grams();
    }
    if (serving != null) {
      return serving.grams();
    }
    Yield yield = batch.root().formula().yieldOrNothing();
    @Nullable Double count = yield.portions() == null ? yield.pieces() : yield.portions();
    return count == null ? null : (Double) (baked.grams() / (count * batch.factor()));
  }
}
