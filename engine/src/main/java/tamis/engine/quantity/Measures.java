package tamis.engine.quantity;

/** Whose cup, tablespoon, pint and fluid ounce is meant. */
public enum Measures {
  /** United States customary. */
  US,
  /** Metric kitchen measures: cup 250 ml, tablespoon 15 ml. */
  METRIC,
  /** Australian: cup 250 ml, tablespoon 20 ml. */
  AU,
  /** Imperial. */
  UK,
  /** Japanese: cup 200 ml. */
  JP
}
