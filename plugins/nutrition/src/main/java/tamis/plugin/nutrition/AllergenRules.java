package tamis.plugin.nutrition;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Which allergens each regime names, by which words, and what it exempts. An allergen whose species
 * a document leaves out, or that no row knows, is named as the whole group: rather too much than
 * too little.
 */
final class AllergenRules {
  static final Table REGIMES =
      read(
          "allergen-regimes",
          "Allergens that regimes name, with the words to look for in a name",
          "regime",
          "allergen",
          "species");
  static final Table EXEMPTIONS =
      read(
          "allergen-exemptions",
          "Foods made of an allergen that need not be named",
          "regime",
          "ingredient",
          "allergen");
  static final Table CODES =
      read("gs1-allergen-codes", "GS1 codes of allergens", "allergen", "species");
  static final Table REVIEW =
      read("allergen-review", "Allergens of the built-in ingredients, by kind", "ingredient");
  static final Table WORDING =
      read("allergen-wording", "How regimes state and emphasise allergens", "regime");

  private static final String NOT_NAMED = "not-named";

  private AllergenRules() {}

  /**
   * How a regime names an allergen.
   *
   * @param row the rule
   * @param allergen under which it is reported
   * @param species it comes from, if it is known
   */
  record Naming(Row row, String allergen, @Nullable String species) {
    /** Two rules that name the same thing are one: wheat comes in as wheat and as gluten. */
    @Override
    public boolean equals(@Nullable Object other) {
      return other instanceof Naming naming
          && allergen.equals(naming.allergen)
          && Objects.equals(species, naming.species)
          && name().equals(naming.name());
    }

    @Override
    public int hashCode() {
      return Objects.hash(allergen, species, name());
    }

    String name() {
      return row.text("name");
    }

    String standing() {
      return row.text("standing");
    }

    boolean isMandatory() {
      return standing().equals("mandatory");
    }

    boolean isNamed() {
      return !standing().equals(NOT_NAMED);
    }

    /** Whether it is wheat, or one of its kinds: {@code wheat (spelt)}. */
    boolean isKindOfWheat() {
      return name().startsWith("wheat");
    }

    /** Words that say the allergen where they stand in the name of an ingredient. */
    List<String> words() {
      return List.of(row.text("words").split(";"));
    }

    /** Whether the regime tells species apart and the document does not say which it is. */
    boolean wantsSpecies() {
      return species == null && hasSpecies(row.text("regime"), row.text("allergen"));
    }

    @Nullable String limit() {
      return row.textOrNull("limit");
    }

    @Nullable Row code() {
      @Nullable Row exact = species == null ? null : CODES.row(allergen + "/" + species);
      return exact == null ? CODES.row(allergen + "/") : exact;
    }
  }

  /** How {@code regime} names this allergen, or null if it has no rule for it. */
  static @Nullable Naming naming(AllergenRegime regime, AllergenFact fact) {
    String prefix = regime + "/" + key(fact.allergen()) + "/";
    @Nullable String species = species(fact);
    @Nullable Row row = species == null ? null : ofSpecies(prefix, species);
    if (row == null) {
      row = REGIMES.row(prefix);
    }
    if (row == null) {
      return null;
    }
    @Nullable String known = row.textOrNull("species");
    return new Naming(row, row.text("as"), known == null ? species : known);
  }

  private static @Nullable Row ofSpecies(String prefix, String species) {
    @Nullable Row exact = REGIMES.row(prefix + species);
    if (exact != null) {
      return exact;
    }
    for (Row row : REGIMES.rows()) {
      @Nullable String one = row.textOrNull("species");
      if (one != null
          && row.key().startsWith(prefix)
          && (species.equals(one + "s")
              || List.of(row.text("words").split(";")).contains(species))) {
        return row;
      }
    }
    return null;
  }

  private static boolean hasSpecies(String regime, String allergen) {
    if (regime.equals("US") && (allergen.equals("fish") || allergen.equals("crustacean"))) {
      return true;
    }
    return !allergen.equals("wheat")
        && REGIMES.rows().stream()
            .anyMatch(
                r ->
                    r.text("regime").equals(regime)
                        && r.text("allergen").equals(allergen)
                        && r.textOrNull("species") != null);
  }

  /** Why an allergen of an ingredient need not be named, or null if it must be. */
  static @Nullable Row exemption(AllergenRegime regime, Ingredient ingredient, AllergenFact fact) {
    return EXEMPTIONS.row(regime + "/" + ingredient.id() + "/" + key(fact.allergen()));
  }

  static Row wording(AllergenRegime regime) {
    @Nullable Row row = WORDING.row(regime.toString());
    if (row == null) {
      throw new IllegalStateException("no wording for " + regime);
    }
    return row;
  }

  static String key(Allergen allergen) {
    return allergen.name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  private static @Nullable String species(AllergenFact fact) {
    if (fact.species() == null) {
      return fact.allergen() == Allergen.WHEAT ? "wheat" : null;
    }
    return fact.species().strip().toLowerCase(Locale.ROOT);
  }

  static Table read(String name, String title, String... key) {
    return TableReader.read(
        AllergenRules.class, "/tamis/plugin/nutrition/" + name + ".csv", title, List.of(key));
  }
}
