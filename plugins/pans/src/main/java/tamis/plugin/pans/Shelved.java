package tamis.plugin.pans;

import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.PanCount;
import tamis.engine.formula.Yield;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pans;
import tamis.engine.quantity.Density;
import tamis.engine.spi.Kitchen;

/**
 * The batter that is to be shared out.
 *
 * @param millilitres its volume
 * @param gramsPerMillilitre its density, or null if it is not known
 */
record Shelved(double millilitres, @Nullable Double gramsPerMillilitre) {

  static Shelved of(TinChoice.Input input, Fill fill, Kitchen kitchen, Notes notes) {
    @Nullable Density density = input.batterDensity();
    if (input.volume() != null) {
      return new Shelved(
          input.volume().millilitres(), density == null ? null : density.gramsPerMillilitre());
    }
    if (input.mass() != null) {
      double each = Objects.requireNonNull(density).gramsPerMillilitre();
      return new Shelved(input.mass().grams() / each, each);
    }
    return ofBatch(input, fill, kitchen, notes);
  }

  /** By the density of the batter, else by the pans that the formula says it fills. */
  private static Shelved ofBatch(TinChoice.Input input, Fill fill, Kitchen kitchen, Notes notes) {
    Batch batch = kitchen.batch(Objects.requireNonNull(input.formula()), input.to());
    batch.remarks().forEach(notes::add);
    double grams = batch.root().madeUp().typical();
    Yield yield = batch.root().formula().yieldOrNothing();
    @Nullable Density density =
        input.batterDensity() == null ? yield.batterDensity() : input.batterDensity();
    if (density != null) {
      return new Shelved(grams / density.gramsPerMillilitre(), density.gramsPerMillilitre());
    }
    List<PanCount> pans = yield.pans();
    if (pans.isEmpty()) {
      throw Refusal.of(
          FaultCode.NO_SIZE,
          "/formula",
          "the volume of this batter is not known: give `batterDensity`, or say in"
              + " `yield.batterDensity` or `yield.pans`");
    }
    double millilitres = 0;
    for (PanCount pan : pans) {
      double part = pan.fill() == null ? fill.part().typical() : pan.fill().value();
      millilitres += Pans.standard().millilitres(pan.pan()).typical() * pan.number() * part;
    }
    millilitres *= batch.factor();
    notes.remark(
        "volume-from-pans",
        "/formula",
        "the volume of the batter is taken from the pans that the formula says it fills");
    return new Shelved(millilitres, grams / millilitres);
  }
}
