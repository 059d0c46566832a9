package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.source.JsonText;
import tamis.plugin.intake.source.Opened;
import tamis.plugin.intake.source.RecipeNodes;
import tamis.plugin.intake.source.Source;

/**
 * Formula documents as a source: one of them, a list, or one on each line. Each is read as the
 * recipe that it would be written as, with itself beside it, so that nothing of it is lost.
 */
final class Documents {
  private Documents() {}

  /** The documents of a tree; empty if it is something else. */
  static List<Map<?, ?>> in(@Nullable Object tree) {
    List<?> all = tree instanceof List<?> list ? list : tree == null ? List.of() : List.of(tree);
    List<Map<?, ?>> documents = new ArrayList<>();
    for (Object one : all) {
      boolean is =
          one instanceof Map<?, ?> map
              && map.get("lines") instanceof List
              && !map.containsKey("@type")
              && !map.containsKey("@graph");
      if (!is) {
        return List.of();
      }
      documents.add((Map<?, ?>) one);
    }
    return documents;
  }

  /**
   * What stands in the lines of a text, one of them on each.
   *
   * @param all the documents or recipes that could be read
   * @param broken why others could not
   */
  record Lines(List<Object> all, List<String> broken) {}

  /** Reads a text line by line; a broken line is told, and the others are read. */
  static Lines lines(String text) {
    List<Object> all = new ArrayList<>();
    List<String> broken = new ArrayList<>();
    int number = 0;
    for (String line : text.lines().toList()) {
      number++;
      try {
        @Nullable Object tree = line.isBlank() ? null : JsonText.parse(line);
        if (tree instanceof Map<?, ?>) {
          all.add(tree);
        } else if (tree != null) {
          broken.add("line " + number + " is no object");
        }
      } catch (JsonText.Broken why) {
        broken.add("line " + number + " is left out: " + why.getMessage());
      }
    }
    return new Lines(all, broken);
  }

  static Opened opened(List<Map<?, ?>> documents, List<String> broken) {
    return new Opened(
        documents.size(), number -> Source.of(documents.get(number - 1), documents.size()), broken);
  }

  /**
   * @throws Refusal if the document is no formula that can be made here
   */
  static Source written(Source bare, Kitchen kitchen, String pointer) {
    try {
      Formula formula =
          new RecordReader(kitchen, Limits.usual()).read(Formula.class, bare.document());
      return RecipeNodes.source(RecipeJson.recipe(formula, "en"), bare.recipes());
    } catch (Refusal refusal) {
      throw refusal.under(pointer);
    }
  }
}
