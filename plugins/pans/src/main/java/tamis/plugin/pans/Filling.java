package tamis.plugin.pans;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Spread;

/**
 * How much goes into pans.
 *
 * @param part of their volume; null for a loaf, which goes by mass
 * @param millilitres batter; null for a loaf
 * @param grams batter or dough; null if no density is known
 * @param massPart the part that the mass on hand fills; null if none was told
 */
record Filling(
    @Nullable Spread part,
    @Nullable Spread millilitres,
    @Nullable Spread grams,
    @Nullable Double massPart) {

  /** Of all the pans together. */
  static Filling of(PanVolume.Input input, Spread held, Notes notes) {
    if (input.dough() != null) {
      return loaf(DoughTin.of(input.dough()), input.mass(), held.typical(), notes);
    }
    Spread part = part(input, notes);
    Spread millilitres = part.times(held.typical());
    @Nullable Density density = input.batterDensity();
    @Nullable Double massPart = null;
    if (density != null && input.mass() != null) {
      massPart = input.mass().grams() / density.gramsPerMillilitre() / held.typical();
      judge(massPart, part, notes);
    }
    return new Filling(
        part,
        millilitres,
        density == null ? null : millilitres.times(density.gramsPerMillilitre()),
        massPart);
  }

  private static Spread part(PanVolume.Input input, Notes notes) {
    if (input.rise() != null) {
      return Spread.exactly(1 / input.rise());
    }
    if (input.bakedDensity() != null && input.batterDensity() != null) {
      double part =
          input.bakedDensity().gramsPerMillilitre() / input.batterDensity().gramsPerMillilitre();
      notes.estimate(
          "rise-from-density",
          "/bakedDensity",
          "the rise is taken from the two densities; what bakes off makes it a little smaller");
      return Spread.exactly(Math.min(1, part));
    }
    Fill fill = Fill.of(input.fill(), input.batter());
    fill.cite(notes, "/batter", "/fillMillilitres");
    return fill.part();
  }

  private static Filling loaf(DoughTin tin, @Nullable Mass mass, double held, Notes notes) {
    notes.cite(tin.row(), "/fillGrams");
    Spread grams = tin.grams(held);
    @Nullable Double part = null;
    if (mass != null) {
      part = mass.grams() / grams.typical();
      if (mass.grams() > grams.high()) {
        notes.remark("overflow", "/mass", tooMuch(mass.grams(), grams.high()));
      } else if (mass.grams() < grams.low()) {
        notes.remark("too-shallow", "/mass", tooLittle(mass.grams(), grams.low()));
      }
    }
    return new Filling(null, null, grams, part);
  }

  private static void judge(double part, Spread usual, Notes notes) {
    if (part > 1) {
      notes.remark(
          "overflow",
          "/mass",
          String.format(
              Locale.ROOT,
              "the batter alone fills %.0f %% of the pan: it does not fit",
              part * 100));
    } else if (part > usual.high() * (1 + 1e-9)) {
      notes.remark(
          "overflow",
          "/mass",
          String.format(
              Locale.ROOT,
              "the batter fills %.0f %% of the pan, more than %.0f %%: it may run over",
              part * 100,
              usual.high() * 100));
    } else if (part < usual.low() * (1 - 1e-9)) {
      notes.remark(
          "too-shallow",
          "/mass",
          String.format(
              Locale.ROOT,
              "the batter fills %.0f %% of the pan, less than %.0f %%: a shallow cake that dries"
                  + " sooner",
              part * 100,
              usual.low() * 100));
    }
  }

  private static String tooMuch(double given, double most) {
    return String.format(
        Locale.ROOT,
        "%.0f g of dough is more than the %.0f g that is usual: it may run over",
        given,
        most);
  }

  private static String tooLittle(double given, double least) {
    return String.format(
        Locale.ROOT,
        "%.0f g of dough is less than the %.0f g that is usual: a low loaf",
        given,
        least);
  }
}
