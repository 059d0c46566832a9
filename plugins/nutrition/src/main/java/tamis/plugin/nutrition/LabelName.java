package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.ConsistsOf;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.plugin.nutrition.AllergenRules.Naming;

/** The name of an ingredient as a list prints it, with its parts and its allergens marked. */
final class LabelName {
  /** Stand around a marked word until the list is written as text or HTML. */
  static final char MARK = '\u0001';

  static final char END = '\u0002';

  private LabelName() {}

  /** The name to print: the shop's first, or what a built-in food goes by. */
  static String plain(Ingredient ingredient, LabelRegime regime) {
    boolean builtIn = ingredient.equals(ReferenceIngredients.standard().byId(ingredient.id()));
    if (!builtIn) {
      return ingredient.title("en");
    }
    List<String> english = ingredient.names().getOrDefault("en", List.of());
    if (english.size() > 1) { // the first of a built-in food is its heading in a table
      return english.get(1);
    }
    List<String> local = ingredient.names().getOrDefault(regime.english(), List.of());
    return local.isEmpty() ? ingredient.id().replace('-', ' ') : local.get(0);
  }

  /** Name, parts and allergens: {@code dark chocolate (cocoa mass, sugar, emulsifier: SOY …)}. */
  static String marked(Ingredient ingredient, LabelRegime regime, String percent) {
    List<Naming> allergens = allergens(ingredient, regime);
    List<String> parts = ingredient.consistsOf().stream().map(ConsistsOf::name).toList();
    String name = plain(ingredient, regime);
    String inside = String.join(", ", parts);
    List<String> missing = new ArrayList<>();
    for (Naming allergen : allergens) {
      boolean said = says(name, allergen) || says(inside, allergen);
      String word = MARK + word(allergen) + END;
      if (!said && !missing.contains(word)) {
        missing.add(word);
      }
    }
    String text = marked(name, allergens) + percent;
    if (parts.isEmpty()) {
      return missing.isEmpty() ? text : text + " (" + String.join(", ", missing) + ")";
    }
    String more = missing.isEmpty() ? "" : ", contains " + String.join(", ", missing);
    return text + " (" + marked(inside, allergens) + more + ")";
  }

  private static String word(Naming allergen) {
    if (allergen.isKindOfWheat()) {
      return allergen.name().replaceFirst(" \\(.*", "");
    }
    return allergen.species() == null ? allergen.name() : allergen.species();
  }

  private static List<Naming> allergens(Ingredient ingredient, LabelRegime regime) {
    List<Naming> found = new ArrayList<>();
    for (AllergenFact fact : ingredient.contains()) {
      @Nullable Naming naming = AllergenRules.naming(regime.allergens(), fact);
      if (naming != null
          && naming.isNamed()
          && AllergenRules.exemption(regime.allergens(), ingredient, fact) == null
          && !found.contains(naming)) {
        found.add(naming);
      }
    }
    return found;
  }

  /** That spelt, durum and the like are wheat is not known to everybody, so wheat is to be read. */
  private static boolean says(String text, Naming allergen) {
    List<String> enough = allergen.isKindOfWheat() ? List.of("wheat") : allergen.words();
    return enough.stream().anyMatch(word -> pattern(word).matcher(text).find());
  }

  private static String marked(String text, List<Naming> allergens) {
    List<String> words = new ArrayList<>();
    allergens.forEach(allergen -> words.addAll(allergen.words()));
    words.sort(Comparator.comparing(String::length).reversed());
    if (words.isEmpty()) {
      return text;
    }
    String any = String.join("|", words.stream().map(Pattern::quote).toList());
    return pattern(any)
        .matcher(text)
        .replaceAll(found -> Matcher.quoteReplacement(MARK + found.group() + END));
  }

  private static Pattern pattern(String words) {
    return Pattern.compile("\\b(?:" + words + ")\\b", Pattern.CASE_INSENSITIVE);
  }
}
