package tamis.engine.quantity;

/** In whose measures figures are shown to a person beside the plain number. */
public enum Shown {
  US,
  METRIC
}
