package tamis.plugin.nutrition;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Formulas whose figures are easily seen, and what they feed as a caller asks for it. */
final class Feeding {
  private Feeding() {}

  static Kitchen kitchen() {
    return new Bakery()
        .with(Bakery.formula("fudge", Map.of("pieces", 10), "fat-block 200 g", "own-water 800 g"))
        .with(
            Bakery.formula(
                "caramel",
                Map.of("makeUpLoss", "2 %", "bakeLoss", "10 %"),
                "sugar-granulated 300 g",
                "milk-whole 300 g",
                "butter-unsalted 100 g"))
        .with(
            Bakery.formula(
                "slice",
                Map.of("portions", 12, "bakeLoss", "8 %"),
                "all-purpose-flour 400 g",
                "butter-unsalted 200 g",
                "egg 100 g",
                "=caramel 300 g",
                "walnut 50 g",
                "oil-sunflower 500 g remains 0.1",
                "salt as needed"))
        .with(Bakery.formula("flat", Map.of(), "sugar-granulated 80 g", "mystery 20 g"))
        .with(Bakery.formula("punch", Map.of(), "rum 100 g", "water 900 g"))
        .with(Bakery.formula("lozenge", Map.of("density", "1.2 g/ml"), "sugar-granulated 100 g"))
        .withIngredient(
            ingredient(
                "fat-block",
                Map.of(
                    "fat",
                    100,
                    "vitaminCMg",
                    100,
                    "protein",
                    0,
                    "carbohydrate",
                    0,
                    "water",
                    0,
                    "sodiumMg",
                    400)))
        .withIngredient(
            ingredient(
                "own-water",
                Map.of(
                    "fat",
                    0,
                    "protein",
                    0,
                    "carbohydrate",
                    0,
                    "water",
                    100,
                    "sodiumMg",
                    0,
                    "vitaminCMg",
                    0)))
        .withIngredient(ingredient("mystery", Map.of("carbohydrate", 50)))
        .open();
  }

  static Map<String, Object> ingredient(String id, Map<String, ?> per100g) {
    return Map.of("id", id, "names", Map.of("en", List.of(id)), "per100g", per100g);
  }

  static Map<String, Object> asked(Object formula, String regime, Object... more) {
    Map<String, Object> input = new HashMap<>();
    input.put("formula", formula);
    input.put("regime", regime);
    for (int i = 0; i < more.length; i += 2) {
      input.put((String) more[i], more[i + 1]);
    }
    return input;
  }

  static Nutrition.Input read(Map<String, ?> input) {
    RecordReader reader = new RecordReader((References) kitchen(), Limits.usual());
    return reader.read(Nutrition.Input.class, input);
  }

  static Answer<Nutrition.Result> answer(Nutrition.Input input) {
    return new Nutrition().calculate(input, kitchen());
  }

  static Nutrition.Result result(Map<String, ?> input) {
    return answer(read(input)).result();
  }
}
