package tamis.plugin.orders;

/** Whose list of allergens is meant. */
public enum Regime {
  UNITED_STATES("US"),
  EUROPEAN_UNION("EU"),
  UNITED_KINGDOM("UK"),
  CANADA("CA"),
  AUSTRALIA_NEW_ZEALAND("AU-NZ"),
  JAPAN("JP");

  private final String text;

  Regime(String text) {
    this.text = text;
  }

  @Override
  public String toString() {
    return text;
  }
}
