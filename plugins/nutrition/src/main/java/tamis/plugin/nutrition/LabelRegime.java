package tamis.plugin.nutrition;

/** Whose label is meant. */
public enum LabelRegime {
  UNITED_STATES("US", AllergenRegime.UNITED_STATES, "US", "en-US"),
  EUROPEAN_UNION("EU", AllergenRegime.EUROPEAN_UNION, "EU", "en-GB"),
  /** The figures of the EU, kept. */
  UNITED_KINGDOM("UK", AllergenRegime.UNITED_KINGDOM, "EU", "en-GB");

  private final String text;
  private final AllergenRegime allergens;
  private final String figures;
  private final String english;

  LabelRegime(String text, AllergenRegime allergens, String figures, String english) {
    this.text = text;
    this.allergens = allergens;
    this.figures = figures;
    this.english = english;
  }

  AllergenRegime allergens() {
    return allergens;
  }

  /** The regime under which the tables of figures have its rows. */
  String figures() {
    return figures;
  }

  /** Language tag of the names of foods there. */
  String english() {
    return english;
  }

  boolean isAmerican() {
    return this == UNITED_STATES;
  }

  @Override
  public String toString() {
    return text;
  }
}
