package tamis.plugin.scaling;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;

/** The batch that is asked for, changed for the altitude and, if wanted, to whole eggs. */
final class Sized {
  private final Scaling.Input input;
  private final @Nullable AltitudeChange altitude;
  private final Kitchen kitchen;
  private final Notes notes;

  Sized(Scaling.Input input, @Nullable AltitudeChange altitude, Kitchen kitchen, Notes notes) {
    this.input = input;
    this.altitude = altitude;
    this.kitchen = kitchen;
    this.notes = notes;
  }

  Batch batch() {
    Batch batch = made(input.to());
    batch.remarks().forEach(notes::add);
    if (input.rounding() == null || !input.rounding().wantsWholeEggs()) {
      return batch;
    }
    List<WholeEggs> eggs = WholeEggs.of(batch);
    return eggs.isEmpty() ? batch : whole(batch, eggs);
  }

  private Batch made(@Nullable To to) {
    Batch batch = kitchen.batch(input.formula(), to);
    return altitude == null ? batch : altitude.of(batch);
  }

  /** With the first kind of egg whole; the others are told in the result. */
  private Batch whole(Batch batch, List<WholeEggs> eggs) {
    WholeEggs first = eggs.get(0);
    @Nullable Double factor = first.downFactor();
    if (batch.limitedBy() == null) {
      factor = first.nearestFactor();
    }
    if (factor == null) {
      remark("what is on hand does not allow one whole egg, so the batch is left as it is");
      return batch;
    }
    double ratio = factor / batch.factor();
    if (ratio == 1) {
      return batch;
    }
    remark(
        String.format(
            Locale.ROOT,
            "the batch is made %.1f %% %s, so that whole eggs are used",
            Math.abs(ratio - 1) * 100,
            ratio < 1 ? "smaller" : "larger"));
    if (eggs.size() > 1) {
      remark("only `" + first.ingredient() + "` is made whole; see wholeEggs for the others");
    }
    return batch.times(ratio);
  }

  private void remark(String message) {
    notes.remark("whole-eggs", "/rounding/wholeEggs", message);
  }
}
