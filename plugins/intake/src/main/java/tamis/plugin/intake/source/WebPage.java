package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jspecify.annotations.Nullable;

/** Reads a page of the web: its JSON-LD if there is any that holds a recipe, else its text. */
public final class WebPage {
  private WebPage() {}

  public static Opened opened(String html) {
    Document page = Jsoup.parse(html);
    List<Map<?, ?>> recipes = new ArrayList<>();
    List<String> broken = new ArrayList<>();
    for (Element script : page.select("script[type^=application/ld+json]")) {
      try {
        recipes.addAll(RecipeNodes.in(JsonText.parse(script.data())));
      } catch (JsonText.Broken why) {
        broken.add(
            "a block of JSON-LD of the page is not readable and was left: " + why.getMessage());
      }
    }
    String lang = page.select("html").attr("lang");
    @Nullable String tag = lang.isBlank() ? null : lang;
    if (recipes.isEmpty()) {
      Source text = Source.page(SourceLine.of(Markup.lines(page)), tag, 1);
      return new Opened(1, number -> text, broken);
    }
    return new Opened(
        recipes.size(),
        number -> RecipeNodes.source(recipes.get(number - 1), recipes.size()).orIn(tag),
        broken);
  }
}
