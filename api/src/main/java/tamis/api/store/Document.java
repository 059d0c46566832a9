package tamis.api.store;

import java.nio.charset.StandardCharsets;
import java.util.LinkedHashSet;
import java.util.Locale;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.ResultJson;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.Ingredient;

/**
 * A document as it is kept.
 *
 * @param kind formula or ingredient
 * @param id of the document
 * @param title for lists
 * @param json the text that a reader gets
 * @param record the same, read
 * @param uses ids of the formulas that it names
 * @param words what it is found by, in lower case
 */
public record Document(
    Kind kind,
    String id,
    String title,
    String json,
    Record record,
    Set<String> uses,
    Set<String> words) {

  /** A formula under its id. */
  public static Document of(Formula formula, String id) {
    Set<String> uses = new LinkedHashSet<>();
    Set<String> words = new LinkedHashSet<>();
    collect(formula, uses, words);
    words.add(id);
    return new Document(
        Kind.FORMULA, id, formula.name(), json(formula), formula, Set.copyOf(uses), split(words));
  }

  /** An ingredient. */
  public static Document of(Ingredient ingredient) {
    Set<String> words = new LinkedHashSet<>();
    words.add(ingredient.id());
    ingredient.names().values().forEach(words::addAll);
    for (AllergenFact fact : ingredient.contains()) {
      words.add(fact.allergen().name().replace('_', ' '));
      if (fact.species() != null) {
        words.add(fact.species());
      }
    }
    return new Document(
        Kind.INGREDIENT,
        ingredient.id(),
        ingredient.title("en"),
        json(ingredient),
        ingredient,
        Set.of(),
        split(words));
  }

  private static String json(Record record) {
    return new String(ResultJson.bytes(record), StandardCharsets.UTF_8);
  }

  private static void collect(Formula formula, Set<String> uses, Set<String> words) {
    if (formula.title() != null) {
      words.add(formula.title());
    }
    for (Line line : formula.lines()) {
      words.add(line.name());
      @Nullable FormulaRef part = line.formula();
      if (part != null && part.id() != null) {
        uses.add(part.id());
      } else if (part != null && part.object() != null) {
        collect(part.object(), uses, words);
      }
    }
  }

  /** The words of a text, in lower case, letters and digits only. */
  static Set<String> split(Iterable<String> texts) {
    Set<String> words = new LinkedHashSet<>();
    for (String text : texts) {
      for (String word : text.toLowerCase(Locale.ROOT).split("[^\\p{L}\\p{N}]+", -1)) {
        if (!word.isEmpty()) {
          words.add(word);
        }
      }
    }
    return words;
  }
}
