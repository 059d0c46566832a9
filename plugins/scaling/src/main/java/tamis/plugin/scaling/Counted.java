package tamis.plugin.scaling;

import java.math.BigDecimal;
import java.math.MathContext;
import java.math.RoundingMode;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.ScaleStep;
import tamis.engine.quantity.Units;

/** Eggs, sticks, spoons and jugs as a baker counts them beside the scale. */
final class Counted {
  /** A jug is marked in millilitres, so these are read off and not counted in quarters. */
  private static final Set<String> MARKED_ON_A_JUG = Set.of("ml", "cl", "dl", "l");

  /** How far a quarter may be from the amount; further off it would spoil the batch. */
  private static final double QUARTER_MAY_BE_OFF = 0.05;

  private static final MathContext HUNDREDTHS_OF_A_FEW = new MathContext(3, RoundingMode.HALF_UP);
  private static final MathContext LITTLE = new MathContext(2, RoundingMode.HALF_UP);

  private Counted() {}

  static @Nullable String of(@Nullable Quantity quantity) {
    if (quantity == null || quantity.dimension() == Dimension.MASS) {
      return null;
    }
    double amount = quantity.amount();
    if (MARKED_ON_A_JUG.contains(quantity.unit())) {
      return ScaleStep.shownVolume(
          Units.standard().unit(quantity.unit(), Measures.METRIC).toCanonical(amount));
    }
    return number(amount) + " " + quantity.unit();
  }

  /** To a quarter where one is near, else as exactly as it can be told apart. */
  private static String number(double amount) {
    double quarters = ScaleStep.round(amount, 0.25);
    if (Math.abs(quarters - amount) <= QUARTER_MAY_BE_OFF * amount) {
      return Bounds.plain(quarters);
    }
    return BigDecimal.valueOf(amount)
        .round(amount < 1 ? LITTLE : HUNDREDTHS_OF_A_FEW)
        .stripTrailingZeros()
        .toPlainString();
  }
}
