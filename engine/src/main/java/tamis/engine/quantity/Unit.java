package tamis.engine.quantity;

import tamis.engine.table.Row;

/**
 * One unit. An amount x of it is {@code (x + offset) · factor} in the canonical unit of its
 * dimension.
 *
 * @param symbol as printed
 * @param dimension what it measures
 * @param factor canonical units in one of it
 * @param offset added before the factor; only temperatures have one
 * @param imprecise a pinch, a dash: no two hands agree
 * @param row the fact it stands on
 */
public record Unit(
    String symbol, Dimension dimension, double factor, double offset, boolean imprecise, Row row) {

  /** The amount in the canonical unit of the dimension. */
  public double toCanonical(double amount) {
    return offset == 0 ? amount * factor : (amount + offset) * factor;
  }

  /** The amount in this unit of a canonical amount. */
  public double fromCanonical(double amount) {
    return offset == 0 ? amount / factor : amount / factor - offset;
  }
}
