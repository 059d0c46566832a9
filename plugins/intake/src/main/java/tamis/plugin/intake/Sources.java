package tamis.plugin.intake;

import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.plugin.intake.source.Divided;
import tamis.plugin.intake.source.JsonText;
import tamis.plugin.intake.source.RecipeNodes;
import tamis.plugin.intake.source.Sheet;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.source.WebPage;

/** Opens the source that an input brings. */
final class Sources {
  private Sources() {}

  static Source of(Intake.Input input, Notes notes) {
    int which = input.recipe() == null ? 1 : input.recipe();
    if (input.text() != null) {
      Divided divided = Divided.of(input.text());
      Source.checked(which, divided.count());
      return Source.text(divided.part(which)).of(divided.count());
    }
    if (input.csv() != null) {
      return Sheet.read(input.csv(), which);
    }
    if (input.html() != null) {
      return WebPage.read(input.html(), which, notes);
    }
    Object tree = Objects.requireNonNull(input.jsonld());
    List<Map<?, ?>> recipes = RecipeNodes.in(tree instanceof String text ? parsed(text) : tree);
    if (recipes.isEmpty()) {
      throw Refusal.of(
          FaultCode.NO_SUCH_VALUE,
          "/jsonld",
          "there is no object of the type Recipe in it; send the page as text or html instead");
    }
    return RecipeNodes.source(Source.chosen(recipes, which), recipes.size());
  }

  private static @Nullable Object parsed(String text) {
    try {
      return JsonText.parse(text);
    } catch (JsonText.Broken broken) {
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/jsonld",
              null,
              "JSON",
              "the text is no JSON: " + broken.getMessage()));
    }
  }
}
