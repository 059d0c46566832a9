package tamis.plugin.pans;

import org.jspecify.annotations.Nullable;
import tamis.engine.pan.Coat;
import tamis.engine.record.Described;

/** How far cream on hand goes on a cake. */
public record Reach(
    @Described(value = "Cream on hand", unit = "ml") double millilitres,
    @Described("So many of these cakes") double cakes,
    @Described("Whole cakes among them") int wholeCakes,
    @Described(value = "Left over after the whole cakes", unit = "ml") double leftMillilitres,
    @Described(value = "Left over after the whole cakes", unit = "g") double leftGrams,
    @Described("Times all thicknesses that would use it up on one cake; left out above 3")
        @Nullable Double thicknessFactor) {
  private static final double MOST_TIMES_AS_THICK = 3;
  private static final int HALVINGS = 60;

  /** Of so many millilitres on cakes that are coated like this. */
  static Reach of(double millilitres, double density, Coat coat) {
    double one = coat.volumes().total();
    double cakes = millilitres / one;
    double whole = wholeOf(cakes);
    double left = Math.max(0, millilitres - whole * one);
    return new Reach(
        millilitres,
        cakes,
        (int) Math.min(Integer.MAX_VALUE, whole),
        left,
        left * density,
        thickness(millilitres, coat));
  }

  /** As many as there is cream for, where a hair of rounding does not cost a cake. */
  static double wholeOf(double cakes) {
    return Math.floor(cakes * (1 + 1e-12));
  }

  private static @Nullable Double thickness(double millilitres, Coat coat) {
    double low = 0;
    double high = MOST_TIMES_AS_THICK;
    if (coat.volumes(high).total() < millilitres || coat.volumes(low).total() > millilitres) {
      return null;
    }
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (coat.volumes(middle).total() < millilitres) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return (low + high) / 2;
  }
}
