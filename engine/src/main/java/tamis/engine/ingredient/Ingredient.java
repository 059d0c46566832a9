package tamis.engine.ingredient;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;

/** An ingredient document. What is not known is absent, never zero. */
public record Ingredient(
    @Described(value = "Lower-case words with hyphens", example = "almond-ground", most = 80)
        String id,
    @Described(value = "Names by language tag (BCP 47), the one to print first", fewest = 1)
        Map<String, List<String>> names,
    @Described(value = "Mass of a millilitre, by state", optional = true, most = 100)
        List<StateDensity> densities,
    @Described(
            value = "Mass of one piece, for an ingredient that is counted",
            nullAllowed = true,
            example = "50 g")
        @Nullable Mass pieceMass,
    @Described(value = "Masses of other pieces", optional = true, most = 100)
        List<PieceMass> pieces,
    @Described(
            value = "Composition of 100 g of the edible part; what is left out is not known",
            optional = true)
        Map<Nutrient, Double> per100g,
    @Described(value = "Allergens it contains", optional = true, most = 100)
        List<AllergenFact> contains,
    @Described(value = "Allergens it may contain", optional = true, most = 100)
        List<AllergenFact> mayContain,
    @Described(
            value = "What a compound ingredient consists of, heaviest first",
            optional = true,
            most = 100)
        List<ConsistsOf> consistsOf,
    @Described(value = "Whether it counts as flour in baker's percentage") @Nullable Boolean flour,
    @Described(value = "Whether small errors matter: salt, yeast, leavening, gelatine")
        @Nullable Boolean sensitive,
    @Described(value = "Kind of food: flour, sugar, dairy, egg …", example = "nut", most = 40)
        @Nullable String kind,
    @Described(value = "Temperatures it works at", optional = true, most = 20)
        List<ThermalWindow> windows,
    @Described("How it is bought") @Nullable Purchase purchase,
    @Described(value = "Where the facts come from", most = 400) @Nullable String source) {
  public Ingredient {
    Faults faults = new Faults();
    if (!isId(id)) {
      faults.add(FaultCode.NOT_ALLOWED, "/id", "an id is lower-case words with hyphens, was " + id);
    }
    names.forEach(
        (language, list) -> {
          if (list.isEmpty() || list.stream().anyMatch(String::isBlank)) {
            faults.add(FaultCode.MISSING, "/names/" + language, "needs at least one name");
          }
        });
    per100g.forEach(
        (nutrient, value) -> {
          if (!(value >= 0 && value <= nutrient.mostIn100g())) {
            faults.add(
                FaultCode.OUT_OF_BOUNDS,
                "/per100g/" + nutrient,
                nutrient.words()
                    + " must be 0 to "
                    + Bounds.plain(nutrient.mostIn100g())
                    + " "
                    + nutrient.unit()
                    + " in 100 g, was "
                    + Bounds.plain(value));
          }
        });
    faults.refuseIfAny();
  }

  /**
   * Whether a text is an id: lower-case words with hyphens between them. Letter by letter, for a
   * pattern with repeated groups runs out of stack on a text as long as a body.
   */
  public static boolean isId(String text) {
    boolean afterWord = false;
    for (int i = 0; i < text.length(); i++) {
      char letter = text.charAt(i);
      boolean word = (letter >= 'a' && letter <= 'z') || (letter >= '0' && letter <= '9');
      if (!word && !(letter == '-' && afterWord)) {
        return false;
      }
      afterWord = word;
    }
    return afterWord;
  }

  /** Whether it is flour in baker's percentage. */
  public boolean isFlour() {
    return Boolean.TRUE.equals(flour);
  }

  /** Whether small errors of weighing matter. */
  public boolean isSensitive() {
    return Boolean.TRUE.equals(sensitive);
  }

  /** The name to print: the first in {@code language}, else in English, else of any language. */
  public String title(String language) {
    List<String> found = names.getOrDefault(language, names.getOrDefault("en", List.of()));
    return found.isEmpty() ? names.values().iterator().next().get(0) : found.get(0);
  }

  /** All states a density or a piece is known for. */
  public Set<String> states() {
    Set<String> states = new LinkedHashSet<>();
    densities.forEach(density -> states.add(density.state()));
    List<@Nullable String> sizes = new ArrayList<>();
    pieces.forEach(piece -> sizes.add(piece.state()));
    for (@Nullable String size : sizes) {
      if (size != null) {
        states.add(size);
      }
    }
    return states;
  }

  /** The amount of a nutrient in 100 g, or null if it is not known. */
  public @Nullable Double per100g(Nutrient nutrient) {
    return per100g.get(nutrient);
  }

  /**
   * The amount in 100 g where the document says it or it follows: where there is no fat there is no
   * trans fat. Null if it is not known.
   */
  public @Nullable Double known(Nutrient nutrient) {
    @Nullable Double value = per100g.get(nutrient);
    @Nullable Nutrient whole = nutrient.partOf();
    if (value != null || whole == null) {
      return value;
    }
    @Nullable Double all = known(whole);
    return all != null && all == 0 ? all : null;
  }

  /** The most that 100 g can hold of a nutrient that the document does not name, in its unit. */
  public double most(Nutrient nutrient) {
    @Nullable Nutrient whole = nutrient.partOf();
    if (whole == null) {
      return nutrient.unit().equals("g") ? 100 : Double.POSITIVE_INFINITY;
    }
    @Nullable Double all = known(whole);
    return all == null ? most(whole) : all;
  }
}
