package tamis.engine.quantity;

import java.util.Locale;

/** What is measured; each with the unit in which amounts are kept. */
public enum Dimension {
  MASS("g"),
  VOLUME("ml"),
  TEMPERATURE("K"),
  TEMPERATURE_DIFFERENCE("K"),
  LENGTH("m"),
  ENERGY("J"),
  POWER("W"),
  PRESSURE("Pa"),
  DENSITY("g/ml"),
  TIME("s"),
  COUNT("each"),
  /** A piece of an ingredient that has its own mass there: a leaf, a slice, a clove. */
  PIECE("each"),
  RATIO("");

  private final String canonical;
  private final String text;

  Dimension(String canonical) {
    this.canonical = canonical;
    this.text = name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }

  /** The unit in which amounts of this dimension are kept. */
  public String canonical() {
    return canonical;
  }

  @Override
  public String toString() {
    return text;
  }
}
