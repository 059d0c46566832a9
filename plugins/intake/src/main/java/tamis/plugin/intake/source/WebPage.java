package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import tamis.engine.note.Notes;

/** Reads a page of the web: its JSON-LD if there is any that holds a recipe, else its text. */
public final class WebPage {
  private WebPage() {}

  public static Source read(String html, int which, Notes notes) {
    Document page = Jsoup.parse(html);
    List<Map<?, ?>> recipes = new ArrayList<>();
    for (Element script : page.select("script[type^=application/ld+json]")) {
      try {
        recipes.addAll(RecipeNodes.in(JsonText.parse(script.data())));
      } catch (JsonText.Broken broken) {
        notes.remark(
            "json-ld-broken",
            "/html",
            "a block of JSON-LD of the page is not readable and was left: " + broken.getMessage());
      }
    }
    if (!recipes.isEmpty()) {
      Source source = RecipeNodes.source(Source.chosen(recipes, which), recipes.size());
      return source.tag() != null ? source : tagged(source, page);
    }
    Source source = Source.text(Markup.lines(page));
    Source.chosen(List.of(source), which);
    return tagged(source, page);
  }

  private static Source tagged(Source source, Document page) {
    String tag = page.select("html").attr("lang");
    return new Source(
        source.page(),
        source.title(),
        source.lines(),
        source.steps(),
        source.yields(),
        source.notes(),
        tag.isBlank() ? null : tag,
        source.recipes(),
        source.document());
  }
}
