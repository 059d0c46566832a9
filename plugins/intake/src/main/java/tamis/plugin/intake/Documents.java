package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
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

  /** The JSON of each line of a text; null if a line is none. */
  static @Nullable List<Object> lines(String text) {
    List<Object> lines = new ArrayList<>();
    for (String line : text.lines().filter(l -> !l.isBlank()).toList()) {
      try {
        lines.add(Objects.requireNonNullElse(JsonText.parse(line), ""));
      } catch (JsonText.Broken broken) {
        return null;
      }
    }
    return lines;
  }

  static Opened opened(List<Map<?, ?>> documents) {
    return new Opened(
        documents.size(),
        number -> Source.of(documents.get(number - 1), documents.size()),
        List.of());
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
