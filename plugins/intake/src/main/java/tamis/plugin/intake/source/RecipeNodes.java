package tamis.plugin.intake.source;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Figures;

/** Finds the objects of type Recipe in JSON-LD of schema.org, and takes out what they say. */
public final class RecipeNodes {
  private static final int MOST_NODES = 100_000;
  public static final String DOCUMENT = "tamis:formula";

  private RecipeNodes() {}

  /** All recipes, in lists, graphs and within other objects, in the order of the source. */
  public static List<Map<?, ?>> in(@Nullable Object tree) {
    List<Map<?, ?>> recipes = new ArrayList<>();
    Deque<Object> open = new ArrayDeque<>();
    if (tree != null) {
      open.push(tree);
    }
    for (int seen = 0; !open.isEmpty() && seen < MOST_NODES; seen++) {
      Object node = open.pop();
      if (node instanceof Map<?, ?> map && isRecipe(map.get("@type"))) {
        recipes.add(map);
      } else {
        List<Object> inner = new ArrayList<>();
        for (Object part : parts(node)) {
          if (part instanceof Map || part instanceof List) {
            inner.add(part);
          }
        }
        for (int i = inner.size() - 1; i >= 0; i--) {
          open.push(inner.get(i));
        }
      }
    }
    return recipes;
  }

  private static Iterable<?> parts(Object node) {
    return node instanceof Map<?, ?> map
        ? map.values()
        : (List<?>) (node instanceof List ? node : List.of());
  }

  private static boolean isRecipe(@Nullable Object type) {
    if (type instanceof List<?> types) {
      return types.stream().anyMatch(RecipeNodes::isRecipe);
    }
    return type instanceof String name
        && (name.equals("Recipe")
            || name.endsWith("schema.org/Recipe")
            || name.equals("schema:Recipe"));
  }

  public static Source source(Map<?, ?> recipe, int recipes) {
    @Nullable String title = text(recipe.get("name"));
    List<SourceLine> ingredients = new ArrayList<>();
    Object listed =
        recipe.containsKey("recipeIngredient")
            ? recipe.get("recipeIngredient")
            : recipe.get("ingredients");
    for (String line : texts(listed)) {
      add(ingredients, line);
    }
    List<Source.Piece> lines = new ArrayList<>();
    @Nullable String part = null;
    for (SourceLine line : ingredients) {
      lines.add(new Source.Piece(line, part));
    }
    List<SourceLine> steps = new ArrayList<>();
    steps(recipe.get("recipeInstructions"), steps, 0);
    List<SourceLine> notes = new ArrayList<>();
    for (String name : List.of("description", "prepTime", "cookTime", "totalTime")) {
      for (String said : texts(recipe.get(name))) {
        add(notes, name.equals("description") ? said : name + " " + said);
      }
    }
    @Nullable Map<?, ?> document =
        recipe.get(DOCUMENT) instanceof Map<?, ?> formula ? formula : null;
    return new Source(
        List.of(),
        title,
        lines,
        steps,
        texts(recipe.get("recipeYield")),
        notes,
        text(recipe.get("inLanguage")),
        recipes,
        document);
  }

  private static void add(List<SourceLine> lines, String text) {
    for (SourceLine line : SourceLine.of(Markup.plain(text))) {
      int number = lines.size() + 1;
      lines.add(new SourceLine(number, line.text(), 0, line.text().length()));
    }
  }

  /** Steps as text, HowToStep or HowToSection, in lists or alone. */
  private static void steps(@Nullable Object node, List<SourceLine> steps, int depth) {
    if (depth > 8) {
      return;
    }
    if (node instanceof List<?> list) {
      list.forEach(step -> steps(step, steps, depth + 1));
    } else if (node instanceof Map<?, ?> map) {
      if (map.get("itemListElement") != null) {
        @Nullable String heading = text(map.get("name"));
        if (heading != null) {
          add(steps, heading);
        }
        steps(map.get("itemListElement"), steps, depth + 1);
      } else {
        @Nullable String said = text(map.get("text"));
        @Nullable String named = text(map.get("name"));
        if (said != null || named != null) {
          add(steps, said == null ? String.valueOf(named) : said);
        }
      }
    } else if (node instanceof String text) {
      add(steps, text);
    }
  }

  /** Texts of a value that may be one, several, numbers or objects with a name. */
  static List<String> texts(@Nullable Object value) {
    if (value instanceof List<?> list) {
      List<String> texts = new ArrayList<>();
      for (Object entry : list) {
        @Nullable String text = text(entry);
        if (text != null) {
          texts.add(text);
        }
      }
      return texts;
    }
    @Nullable String one = text(value);
    return one == null ? List.of() : List.of(one);
  }

  private static @Nullable String text(@Nullable Object value) {
    if (value instanceof String text) {
      return text.isBlank() ? null : text;
    }
    if (value instanceof Number number) {
      return Figures.of(number.doubleValue());
    }
    if (value instanceof Map<?, ?> map) {
      for (String name : List.of("@value", "text", "name", "value")) {
        if (map.get(name) instanceof String text && !text.isBlank()) {
          return text;
        }
      }
    }
    return value instanceof List<?> list && !list.isEmpty() ? text(list.get(0)) : null;
  }
}
