package tamis.plugin.stages;

import java.util.Locale;

/** Which fat it is, as far as it sets and melts at working temperatures. */
public enum FatKind {
  MILK,
  COCOA,
  /** Oil, or a fat that nothing is known of: counted as melted throughout. */
  LIQUID;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
