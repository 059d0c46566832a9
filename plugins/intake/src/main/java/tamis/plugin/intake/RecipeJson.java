package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Line;
import tamis.engine.formula.Stage;
import tamis.engine.formula.Yield;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.record.PlainValues;
import tamis.plugin.intake.source.JsonText;
import tamis.plugin.intake.source.RecipeNodes;
import tamis.plugin.intake.word.Figures;

/**
 * Writes a formula as a Recipe of schema.org in JSON-LD. What the vocabulary has no word for
 * (state, stage, target …) goes along as the formula itself, under a name of our own, so that
 * nothing is lost on the way back.
 */
final class RecipeJson {
  private RecipeJson() {}

  static String of(Intake.Result result) {
    return JsonText.write(recipe(result.formula(), result.language()));
  }

  static Map<String, Object> recipe(@Nullable Formula formula, String language) {
    Map<String, Object> recipe = new LinkedHashMap<>();
    recipe.put("@context", List.of("https://schema.org", Map.of("tamis", "urn:tamis:")));
    recipe.put("@type", "Recipe");
    recipe.put("inLanguage", language);
    if (formula != null) {
      if (formula.title() != null) {
        recipe.put("name", formula.title());
      }
      yields(formula.yield(), recipe);
      recipe.put("recipeIngredient", ingredients(formula));
      recipe.put("recipeInstructions", steps(formula));
      if (formula.notes() != null) {
        recipe.put("description", formula.notes());
      }
      recipe.put(RecipeNodes.DOCUMENT, PlainValues.of(formula));
    }
    return recipe;
  }

  private static void yields(@Nullable Yield yield, Map<String, Object> recipe) {
    if (yield == null) {
      return;
    }
    if (yield.portions() != null) {
      recipe.put("recipeYield", Figures.of(yield.portions()) + " servings");
    } else if (yield.pieces() != null) {
      recipe.put("recipeYield", Figures.of(yield.pieces()) + " pieces");
    }
  }

  /** Each line as it is in the formula: quantity, state, ingredient, preparation. */
  static List<String> ingredients(Formula formula) {
    List<String> lines = new ArrayList<>();
    for (Line line : formula.lines()) {
      String state = line.state() == null ? "" : line.state() + " ";
      String work = line.preparation() == null ? "" : ", " + line.preparation();
      lines.add(
          line.quantity().isAsNeeded()
              ? name(line) + ", as needed" + work
              : line.quantity() + " " + state + name(line) + work);
    }
    return lines;
  }

  /** As a person calls it: the first name that is no heading of a table. */
  private static String name(Line line) {
    @Nullable Ingredient ingredient = ReferenceIngredients.standard().byId(line.name());
    List<String> names =
        ingredient == null ? List.of() : ingredient.names().getOrDefault("en", List.of());
    return names.size() > 1 ? names.get(1) : line.name();
  }

  private static List<Object> steps(Formula formula) {
    List<Object> steps = new ArrayList<>();
    for (Stage stage : formula.stages()) {
      String text = Objects.requireNonNullElse(stage.cue(), String.valueOf(stage.title()));
      Map<String, Object> step = new LinkedHashMap<>();
      step.put("@type", "HowToStep");
      step.put("text", text);
      steps.add(step);
    }
    return steps;
  }
}
