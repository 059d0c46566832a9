package tamis.plugin.intake;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.atomic.AtomicReference;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.source.Divided;
import tamis.plugin.intake.source.JsonText;
import tamis.plugin.intake.source.Opened;
import tamis.plugin.intake.source.RecipeNodes;
import tamis.plugin.intake.source.Sheet;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.source.WebPage;

/** Opens the source that an input brings. */
final class Sources {
  /**
   * The last source of several recipes: who reads one after the other finds it open. What it gives
   * depends on the source alone.
   */
  private static final AtomicReference<@Nullable Last> LAST = new AtomicReference<>();

  private record Last(int form, Object given, Opened opened) {}

  private Sources() {}

  static Source of(Intake.Input input, Kitchen kitchen, Notes notes) {
    Object given =
        Stream.of(input.text(), input.csv(), input.html(), input.jsonld())
            .filter(Objects::nonNull)
            .findFirst()
            .orElseThrow();
    @Nullable Last last = LAST.get();
    Opened opened =
        last != null && last.form() == form(input) && last.given().equals(given)
            ? last.opened()
            : opened(input, given);
    if (opened.count() > 1) {
      LAST.set(new Last(form(input), given, opened));
    }
    String pointer = input.html() != null ? "/html" : "/jsonld";
    opened.broken().forEach(why -> notes.remark(Intake.PART_BROKEN, pointer, why));
    Source source = opened.recipe(input.recipe() == null ? 1 : input.recipe());
    return source.isDocument()
        ? Documents.written(source, kitchen, input.csv() == null ? "/jsonld" : "/csv")
        : source;
  }

  private static int form(Intake.Input input) {
    return input.text() != null ? 1 : input.csv() != null ? 2 : input.html() != null ? 3 : 4;
  }

  private static Opened opened(Intake.Input input, Object given) {
    if (input.text() != null) {
      return Divided.opened(input.text());
    }
    if (input.csv() != null) {
      @Nullable Map<?, ?> document = Sheet.document(input.csv());
      return document == null
          ? Sheet.opened(input.csv())
          : Documents.opened(List.of(document), List.of());
    }
    if (input.html() != null) {
      return WebPage.opened(input.html());
    }
    return given instanceof String text ? ofJson(text) : ofTree(given, List.of());
  }

  /** One text of JSON, or one on each line. */
  private static Opened ofJson(String text) {
    Object tree;
    try {
      tree = Objects.requireNonNullElse(JsonText.parse(text), "");
    } catch (JsonText.Broken broken) {
      Documents.Lines lines = Documents.lines(text);
      if (isSource(lines.all())) {
        return ofTree(lines.all(), lines.broken());
      }
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/jsonld",
              null,
              "JSON",
              "the text is no JSON: " + broken.getMessage()));
    }
    return ofTree(tree, List.of());
  }

  private static boolean isSource(List<Object> lines) {
    return !Documents.in(lines).isEmpty() || !RecipeNodes.in(lines).isEmpty();
  }

  private static Opened ofTree(Object tree, List<String> broken) {
    List<Map<?, ?>> documents = Documents.in(tree);
    if (!documents.isEmpty()) {
      return Documents.opened(documents, broken);
    }
    List<Map<?, ?>> recipes = RecipeNodes.in(tree);
    if (recipes.isEmpty()) {
      throw Refusal.of(
          FaultCode.NO_SUCH_VALUE,
          "/jsonld",
          "there is no formula and no object of the type Recipe in it; send the page as text or html instead");
    }
    return new Opened(
        recipes.size(),
        number -> RecipeNodes.source(recipes.get(number - 1), recipes.size()),
        broken);
  }
}
