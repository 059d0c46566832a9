package tamis.plugin.intake.name;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.record.Nearest;
import tamis.engine.table.Row;
import tamis.plugin.intake.word.Language;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/**
 * Finds the ingredient that a name stands for: the shop's own first, then what the page's language
 * and place say, then the built-in names. What is not told for certain stays open.
 */
public final class NameFinder {
  private static final int LONGEST = 80;
  private static final int SHORTEST_MISSPELLED = 3;

  /** Each of them costs a look at all names; a novel is full of them. */
  private static final int MOST = 300;

  /** "Essence of lemon" is lemon essence; "cream of tartar" is no tartar cream. */
  private static final Set<String> TURNED = Set.of("extract", "essence", "juice", "zest", "rind");

  private final Larder larder;
  private final Language language;
  private final Tongue tongue;
  private final NamesByLanguage names = NamesByLanguage.standard();
  private Set<String> spellings = Set.of();
  private int misspelled;
  private final Map<String, @Nullable Found> known = new HashMap<>();

  public NameFinder(Larder larder, Language language) {
    this.larder = larder;
    this.language = language;
    this.tongue = Tongue.of(language);
  }

  /** What a name stands for, in the plural too; null if nothing goes by it. */
  public @Nullable Found find(String written) {
    String name = Phrase.folded(written);
    if (name.isEmpty() || name.length() > LONGEST) {
      return null;
    }
    if (!known.containsKey(name)) {
      known.put(name, inAnyForm(name));
    }
    return known.get(name);
  }

  /**
   * @param assumed what is taken for granted, or null
   */
  public Found byId(String id, @Nullable String assumed) {
    return Found.of(larder.byId(id), assumed, false);
  }

  private @Nullable Found inAnyForm(String name) {
    Set<String> forms = new LinkedHashSet<>(List.of(name));
    int of = name.indexOf(" of ");
    if (of > 0 && TURNED.contains(name.substring(0, of))) {
      forms.add(name.substring(of + 4) + " " + name.substring(0, of));
    }
    forms.add(name.replace('-', ' '));
    forms.add(name.replace("-", ""));
    String spelled = spelled(name);
    forms.add(spelled);
    forms.addAll(Singular.of(name, language));
    forms.addAll(Singular.of(spelled, language));
    for (String form : forms) {
      @Nullable Found found = builtIn(form);
      if (found != null) {
        @Nullable Found own = own(name);
        return own == null ? found : own;
      }
    }
    @Nullable Found own = own(name);
    return own == null ? foreign(name) : own;
  }

  /** Old spellings and abbreviations written out, word by word. */
  private String spelled(String name) {
    StringBuilder spelled = new StringBuilder(name.length());
    for (String word : name.split(" ", -1)) {
      String bare = word.endsWith(".") ? word.substring(0, word.length() - 1) : word;
      @Nullable String usual = tongue.value("spelling", bare);
      spelled.append(spelled.isEmpty() ? "" : " ").append(usual == null ? word : usual);
    }
    return spelled.toString();
  }

  private @Nullable Found builtIn(String name) {
    @Nullable Row rule = names.rule(language, name);
    if (rule != null) {
      return ruled(rule, name);
    }
    Set<String> ids = names.in(language, name);
    if (ids.size() > 1) {
      return Found.unsure(
          new ArrayList<>(ids), "`" + name + "` means different foods in different places");
    }
    return ids.isEmpty()
        ? null
        : Found.of(larder.byId(ids.iterator().next()), assumed(name), false);
  }

  private Found ruled(Row rule, String name) {
    List<String> ids = List.of(rule.text("ingredients").split(";", -1));
    @Nullable String remark = rule.textOrNull("remark");
    if (rule.text("rule").equals("differs")) {
      return Found.unsure(ids, "`" + name + "` may be several foods: " + remark);
    }
    return Found.of(larder.byId(ids.get(0)), remark, false);
  }

  /** The shop's own ingredient of this name: it goes before what is built in. */
  private @Nullable Found own(String name) {
    Larder.Answered answered = larder.named(name);
    @Nullable Ingredient ingredient = answered.ingredient();
    if (ingredient != null && !Larder.isBuiltIn(ingredient)) {
      return Found.of(ingredient, null, false);
    }
    boolean ours =
        answered.several().stream()
            .anyMatch(id -> ReferenceIngredients.standard().byId(id) == null);
    return ours
        ? Found.unsure(answered.several(), "several ingredients go by `" + name + "`")
        : null;
  }

  /** An English name on a page in another language. */
  private @Nullable Found foreign(String name) {
    if (language.code().equals("en")) {
      return null;
    }
    @Nullable Row rule = names.rule(Language.EN, name);
    if (rule != null) {
      return ruled(rule, name).inAnotherLanguage();
    }
    Set<String> ids = names.in(Language.EN, name);
    return ids.size() != 1
        ? null
        : Found.of(larder.byId(ids.iterator().next()), assumed(name), true);
  }

  private static @Nullable String assumed(String name) {
    return ReferenceIngredients.standard().assumed(new IngredientRef(name));
  }

  /** Ids of what may have been meant by a misspelled name; empty if nothing is near. */
  public List<String> near(String written) {
    String name = Phrase.folded(written);
    if (name.length() < SHORTEST_MISSPELLED || name.length() > LONGEST || misspelled++ > MOST) {
      return List.of();
    }
    List<String> near = Nearest.to(name, spellings());
    @Nullable Found found = near.isEmpty() ? null : builtIn(near.get(0));
    if (found == null) {
      return List.of();
    }
    @Nullable Ingredient ingredient = found.ingredient();
    return ingredient == null ? found.candidates() : List.of(ingredient.id());
  }

  private Set<String> spellings() {
    spellings = spellings.isEmpty() ? names.all(language) : spellings;
    return spellings;
  }

  /** What may have been meant by a name that nothing goes by; empty if nothing is near. */
  public String suggestion(String written) {
    String name = Phrase.folded(written);
    if (name.isEmpty() || name.length() > LONGEST) {
      return "";
    }
    Larder.Answered answered = larder.named(name);
    @Nullable Ingredient ingredient = answered.ingredient();
    return ingredient == null
        ? answered.suggestion()
        : "; in another language it is `" + ingredient.id() + "`";
  }
}
