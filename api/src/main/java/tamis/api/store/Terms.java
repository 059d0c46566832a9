package tamis.api.store;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.trial.Trial;

/** By what a document is found: words, names, and the formulas that it uses. */
final class Terms {
  /** A longer word is found by its beginning; an index takes no entry of any length. */
  private static final int LONGEST_WORD = 60;

  private static final Pattern BETWEEN_WORDS = Pattern.compile("[^\\p{L}\\p{N}]+");

  private Terms() {}

  /** Ids of the formulas that a document names. */
  static Set<String> uses(Record record) {
    Set<String> uses = new LinkedHashSet<>();
    if (record instanceof Formula formula) {
      collect(formula, uses, new LinkedHashSet<>());
    } else if (record instanceof Trial trial) {
      uses.add(String.valueOf(trial.formula().id()));
    }
    return uses;
  }

  /** Words of title, lines, names and allergens, in lower case. */
  static Set<String> words(String id, Record record) {
    Set<String> texts = new LinkedHashSet<>();
    if (record instanceof Formula formula) {
      collect(formula, new LinkedHashSet<>(), texts);
    } else if (record instanceof Ingredient ingredient) {
      ingredient.names().values().forEach(texts::addAll);
      for (AllergenFact fact : ingredient.contains()) {
        texts.add(fact.allergen().name().replace('_', ' '));
        if (fact.species() != null) {
          texts.add(fact.species());
        }
      }
    } else if (record instanceof Trial trial) {
      texts.add(String.valueOf(trial.formula().id()));
    } else {
      return Set.of();
    }
    texts.add(id);
    return split(texts);
  }

  /** Names of an ingredient, in the form in which names are compared. */
  static Set<String> names(Record record) {
    Set<String> names = new LinkedHashSet<>();
    if (record instanceof Ingredient ingredient) {
      for (List<String> some : ingredient.names().values()) {
        some.forEach(name -> names.add(new IngredientRef(name).folded()));
      }
    }
    return names;
  }

  private static void collect(Formula formula, Set<String> uses, Set<String> texts) {
    if (formula.title() != null) {
      texts.add(formula.title());
    }
    for (Line line : formula.lines()) {
      texts.add(line.name());
      @Nullable FormulaRef part = line.formula();
      if (part != null && part.id() != null) {
        uses.add(part.id());
      } else if (part != null && part.object() != null) {
        collect(part.object(), uses, texts);
      }
    }
  }

  /** The words of texts, in lower case, letters and digits only. */
  static Set<String> split(Iterable<String> texts) {
    Set<String> words = new LinkedHashSet<>();
    for (String text : texts) {
      for (String word : BETWEEN_WORDS.split(text.toLowerCase(Locale.ROOT), -1)) {
        if (!word.isEmpty()) {
          words.add(shortened(word));
        }
      }
    }
    return words;
  }

  private static String shortened(String word) {
    int end = Math.min(word.length(), LONGEST_WORD);
    boolean splits = end < word.length() && Character.isHighSurrogate(word.charAt(end - 1));
    return word.substring(0, splits ? end - 1 : end);
  }
}
