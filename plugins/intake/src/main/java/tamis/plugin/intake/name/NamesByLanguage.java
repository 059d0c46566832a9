package tamis.plugin.intake.name;

import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;
import tamis.plugin.intake.word.Language;
import tamis.plugin.intake.word.Phrase;

/** The names of the built-in ingredients by language, and what a bare or shared name stands for. */
public final class NamesByLanguage {
  public static final Table BY_PLACE =
      TableReader.read(
          NamesByLanguage.class,
          "/tamis/plugin/intake/names-by-place.csv",
          "Names that leave something open, and names that mean other foods in other places",
          List.of("language", "name"));

  /** {@code fr} to {@code prune} to the ids that go by it. */
  private final Map<String, Map<String, Set<String>>> ids = new HashMap<>();

  private final Map<String, Row> rules = new HashMap<>();

  /** Made when the first line is read, not when the program starts. */
  private static final class Holder {
    static final NamesByLanguage STANDARD = new NamesByLanguage();
  }

  private NamesByLanguage() {
    for (Ingredient ingredient : ReferenceIngredients.standard().all()) {
      add("en", ingredient.id(), ingredient.id());
      add("en", ingredient.id().replace('-', ' '), ingredient.id());
      ingredient
          .names()
          .forEach((language, names) -> names.forEach(n -> add(language, n, ingredient.id())));
    }
    for (Row row : BY_PLACE.rows()) {
      rules.put(row.text("language") + ":" + row.text("name"), row);
    }
    for (Row row : BY_PLACE.rows()) { // many a keyboard has no accents
      String plain = Phrase.withoutAccents(row.text("name"));
      rules.putIfAbsent(row.text("language") + ":" + plain, row);
    }
  }

  public static NamesByLanguage standard() {
    return Holder.STANDARD;
  }

  private void add(String language, String name, String id) {
    Map<String, Set<String>> of = ids.computeIfAbsent(language, l -> new HashMap<>());
    String folded = Phrase.folded(name);
    for (String form : new LinkedHashSet<>(List.of(folded, Phrase.withoutAccents(folded)))) {
      of.computeIfAbsent(form, n -> new LinkedHashSet<>()).add(id);
    }
  }

  /** The row that says what a folded name stands for where it is written, or null. */
  public @Nullable Row rule(Language language, String name) {
    @Nullable Row there = rules.get(language + ":" + name);
    boolean placed = there != null || !of(placeOf(language), name).isEmpty();
    return placed ? there : rules.get(language.code() + ":" + name);
  }

  /** The language with its place; empty for a language of no place. */
  private static String placeOf(Language language) {
    String tag = language.toString();
    return tag.equals(language.code()) ? "" : tag;
  }

  /** Ids that go by a folded name where it is written; empty if there are none. */
  Set<String> in(Language language, String name) {
    Set<String> there = of(language.toString(), name);
    if (!there.isEmpty() || !language.code().equals("en")) {
      return there;
    }
    Set<String> everywhere = of("en", name);
    return everywhere.isEmpty() ? inAnyPlace(name) : everywhere;
  }

  /** All names of a language, wherever it is spoken. */
  Set<String> all(Language language) {
    Set<String> all = new TreeSet<>();
    String code = language.code();
    ids.forEach((tag, names) -> all.addAll(tag.startsWith(code) ? names.keySet() : Set.of()));
    for (String key : rules.keySet()) {
      if (key.startsWith(code)) {
        all.add(key.substring(key.indexOf(':') + 1));
      }
    }
    return all;
  }

  /** A name of one place only is that place's, unless two places have it for two foods. */
  private Set<String> inAnyPlace(String name) {
    Set<String> all = new LinkedHashSet<>(of("en-US", name));
    all.addAll(of("en-GB", name));
    all.addAll(of("en-AU", name));
    return all;
  }

  private Set<String> of(String language, String name) {
    return ids.getOrDefault(language, Map.of()).getOrDefault(name, Set.of());
  }
}
