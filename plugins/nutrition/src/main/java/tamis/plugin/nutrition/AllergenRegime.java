package tamis.plugin.nutrition;

/** Whose list of allergens is meant. */
public enum AllergenRegime {
  UNITED_STATES("US"),
  EUROPEAN_UNION("EU"),
  UNITED_KINGDOM("UK"),
  CANADA("CA"),
  AUSTRALIA_NEW_ZEALAND("AU-NZ"),
  JAPAN("JP");

  private final String text;

  AllergenRegime(String text) {
    this.text = text;
  }

  /** The regime of this short name. */
  static AllergenRegime of(String text) {
    for (AllergenRegime regime : values()) {
      if (regime.text.equals(text)) {
        return regime;
      }
    }
    throw new IllegalArgumentException(text + " is no regime");
  }

  @Override
  public String toString() {
    return text;
  }
}
