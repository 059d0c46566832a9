package tamis.plugin.intake.source;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Figures;

/** Finds the objects of type Recipe in JSON-LD of schema.org, and takes out what they say. */
public final class RecipeNodes {
  private static final int MOST_NODES = 1_000_000;
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
    List<SourceLine> notes = new ArrayList<>();
    for (String name : List.of("description", "prepTime", "cookTime", "totalTime")) {
      for (String said : texts(NodeTexts.property(recipe, name))) {
        add(notes, name.equals("description") ? said : name + " " + said);
      }
    }
    NodeTexts steps = new NodeTexts();
    steps.steps(NodeTexts.property(recipe, "recipeInstructions"));
    @Nullable Map<?, ?> document =
        recipe.get(DOCUMENT) instanceof Map<?, ?> formula ? formula : null;
    return new Source(
        List.of(),
        text(NodeTexts.property(recipe, "name")),
        ingredients(recipe, notes),
        lines(steps.texts()),
        texts(NodeTexts.property(recipe, "recipeYield")),
        notes,
        text(NodeTexts.property(recipe, "inLanguage")),
        recipes,
        document);
  }

  /** Where there is a second list with other lines, these are told as notes. */
  private static List<Source.Piece> ingredients(Map<?, ?> recipe, List<SourceLine> notes) {
    List<Source.Piece> lines = List.of();
    for (String name : List.of("recipeIngredient", "ingredients", "supply")) {
      NodeTexts listed = new NodeTexts();
      listed.ingredients(NodeTexts.property(recipe, name));
      List<Source.Piece> more = new ArrayList<>();
      for (NodeTexts.Said said : listed.said()) {
        for (SourceLine line : lines(List.of(said.text()))) {
          SourceLine numbered =
              new SourceLine(more.size() + 1, line.text(), 0, line.text().length());
          more.add(new Source.Piece(numbered, said.part()));
        }
      }
      if (lines.isEmpty()) {
        lines = more;
      } else {
        Set<String> known =
            lines.stream().map(piece -> piece.source().text()).collect(Collectors.toSet());
        more.stream()
            .map(piece -> piece.source().text())
            .filter(text -> !known.contains(text))
            .forEach(text -> add(notes, text));
      }
    }
    return lines;
  }

  private static List<SourceLine> lines(List<String> texts) {
    List<SourceLine> lines = new ArrayList<>();
    texts.forEach(text -> add(lines, text));
    return lines;
  }

  private static void add(List<SourceLine> lines, String text) {
    for (SourceLine line : SourceLine.of(Markup.plain(text))) {
      int number = lines.size() + 1;
      lines.add(new SourceLine(number, line.text(), 0, line.text().length()));
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
