package tamis.plugin.nutrition;

import java.util.Locale;

/** How a product is cooked, as far as vitamins and minerals are concerned. */
public enum Cooking {
  RAW,
  BAKED,
  BOILED;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT);
  }
}
