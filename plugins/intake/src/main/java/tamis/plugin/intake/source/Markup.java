package tamis.plugin.intake.source;

import java.util.Set;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.nodes.TextNode;
import org.jsoup.select.NodeVisitor;

/** Takes the text out of HTML: a line for each block, as a reader sees them. */
final class Markup {
  private static final Set<String> BREAKS =
      Set.of(
          "p",
          "div",
          "li",
          "br",
          "tr",
          "h1",
          "h2",
          "h3",
          "h4",
          "h5",
          "h6",
          "ul",
          "ol",
          "table",
          "section",
          "article",
          "header",
          "footer",
          "dd",
          "dt",
          "blockquote",
          "pre",
          "hr",
          "main",
          "aside",
          "nav",
          "figure",
          "figcaption",
          "form",
          "title");
  private static final Set<String> HIDDEN =
      Set.of("script", "style", "noscript", "template", "svg");

  private Markup() {}

  /** Text that may hold entities or tags, as texts in JSON-LD often do. */
  static String plain(String text) {
    boolean markup = text.indexOf('&') >= 0 || (text.indexOf('<') >= 0 && text.indexOf('>') > 0);
    return markup ? lines(Jsoup.parse(text)) : text;
  }

  static String lines(Document page) {
    StringBuilder text = new StringBuilder();
    page.traverse(
        new NodeVisitor() {
          @Override
          public void head(Node node, int depth) {
            if (node instanceof TextNode words && !isHidden(words)) {
              text.append(words.getWholeText().replace('\n', ' ').replace('\r', ' '));
            } else if (isBreak(node)) {
              text.append('\n');
            }
          }

          @Override
          public void tail(Node node, int depth) {
            if (isBreak(node)) {
              text.append('\n');
            } else if (node instanceof Element cell && cell.normalName().equals("td")) {
              text.append(' ');
            }
          }
        });
    return text.toString();
  }

  private static boolean isBreak(Node node) {
    return node instanceof Element element && BREAKS.contains(element.normalName());
  }

  private static boolean isHidden(TextNode words) {
    return words.parent() instanceof Element element && HIDDEN.contains(element.normalName());
  }
}
