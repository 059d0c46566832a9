package tamis.plugin.costing;

/** What a selling price is for. */
public enum PriceFor {
  PORTION,
  PIECE,
  KILOGRAM,
  BATCH
}
