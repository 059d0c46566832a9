package tamis.plugin.intake;

/** In which quantities the formula is written. */
public enum Quantities {
  /** As the source has them. */
  AS_WRITTEN,
  /** In grams, by densities and piece masses. */
  GRAMS,
  /** Weights and volumes each in US units. */
  US,
  /** Weights and volumes each in metric units. */
  METRIC,
  /** In percent of the flour. */
  PERCENT
}
