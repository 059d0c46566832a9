package tamis.plugin.timeline;

import java.util.Locale;

/** Writes shapes and words as SVG. */
final class Drawing {
  private final StringBuilder svg = new StringBuilder();

  /** What all shapes and words have in common. */
  void open(double wide, double high, String ink, String title, String words) {
    add(
        "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" role=\"img\""
            + " aria-labelledby=\"plan-title plan-words\" font-family=\"sans-serif\" fill=\"%s\""
            + " width=\"%s\" height=\"%s\" style=\"max-width:100%%;height:auto\">",
        n(wide), n(high), ink, n(wide), n(high));
    add("<title id=\"plan-title\">%s</title>", xml(title));
    add("<desc id=\"plan-words\">%s</desc>", xml(words));
  }

  String close() {
    add("</svg>");
    return svg.toString();
  }

  /** What follows belongs together; the words are shown when it is pointed at. */
  void group(String words) {
    add("<g><title>%s</title>", xml(words));
  }

  void endGroup() {
    add("</g>");
  }

  void area(double x, double y, double wide, double high, String colour, double opacity) {
    add(
        "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\" opacity=\"%s\"/>",
        n(x), n(y), n(wide), n(high), colour, opacity);
  }

  void bar(double x, double y, double wide, String fill, String edge, double edgeWidth) {
    add(
        "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"11\" rx=\"2\" fill=\"%s\" stroke=\"%s\""
            + " stroke-width=\"%s\"/>",
        n(x), n(y), n(wide), fill, edge, edgeWidth);
  }

  void down(double x, double from, double to, String colour) {
    add(
        "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\" stroke-width=\"0.6\""
            + " opacity=\"0.35\"/>",
        n(x), n(from), n(x), n(to), colour);
  }

  /** Words with a white edge, so that lines behind them do not cross them. */
  void text(double x, double y, double size, String anchor, boolean bold, String words) {
    add(
        "<text x=\"%s\" y=\"%s\" font-size=\"%s\" text-anchor=\"%s\"%s stroke=\"#ffffff\""
            + " stroke-width=\"3\" stroke-linejoin=\"round\" paint-order=\"stroke\">%s</text>",
        n(x), n(y), n(size), anchor, bold ? " font-weight=\"bold\"" : "", xml(words));
  }

  private void add(String pattern, Object... values) {
    svg.append(String.format(Locale.ROOT, pattern, values)).append('\n');
  }

  private static String n(double value) {
    return String.valueOf(Math.round(value * 10) / 10.0);
  }

  /** Text without what XML cannot hold. */
  private static String xml(String text) {
    StringBuilder clean = new StringBuilder();
    text.codePoints().map(point -> isText(point) ? point : ' ').forEach(clean::appendCodePoint);
    return clean
        .toString()
        .replace("&", "&amp;")
        .replace("<", "&lt;")
        .replace(">", "&gt;")
        .replace("\"", "&quot;");
  }

  private static boolean isText(int point) {
    boolean half = point >= 0xD800 && point <= 0xDFFF;
    return point >= 0x20 && point != 0x7F && !half && point != 0xFFFE && point != 0xFFFF;
  }
}
