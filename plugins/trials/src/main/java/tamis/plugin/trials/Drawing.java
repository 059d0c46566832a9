package tamis.plugin.trials;

import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.DoubleStream;

/** Writes SVG; numbers always with a point and two places. */
final class Drawing {
  static final String INK = "#333333";

  private final StringBuilder svg = new StringBuilder();

  void open(double wide, double high, String title, String description) {
    svg.append(
        format(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" width=\"%s\""
                + " height=\"%s\" role=\"img\" font-family=\"sans-serif\">\n",
            wide, high, wide, high));
    svg.append("<title>").append(escaped(title)).append("</title>\n");
    svg.append("<desc>").append(escaped(description)).append("</desc>\n");
    rectangle(0, 0, wide, high, "#ffffff", "none");
  }

  String close() {
    return svg.append("</svg>\n").toString();
  }

  void rectangle(double x, double y, double width, double height, String fill, String stroke) {
    svg.append(format("<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\"", x, y, width, height));
    svg.append(" fill=\"").append(fill).append("\" stroke=\"").append(stroke).append("\"/>\n");
  }

  void line(double x1, double y1, double x2, double y2, String stroke, String dashes) {
    svg.append(format("<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\"", x1, y1, x2, y2));
    svg.append(" stroke=\"").append(stroke).append('"').append(dashed(dashes)).append("/>\n");
  }

  void polyline(List<double[]> points, TrialMark mark) {
    String places =
        points.stream().map(p -> format("%s,%s", p[0], p[1])).collect(Collectors.joining(" "));
    svg.append("<polyline points=\"").append(places).append("\" fill=\"none\" stroke=\"");
    svg.append(mark.colour()).append("\" stroke-width=\"1.5\"");
    svg.append(dashed(mark.dashes())).append("/>\n");
  }

  void mark(double x, double y, TrialMark mark) {
    svg.append("<path d=\"").append(mark.path(x, y)).append("\" fill=\"");
    svg.append(mark.filled() ? mark.colour() : "#ffffff").append("\" stroke=\"");
    svg.append(mark.colour()).append("\" stroke-width=\"1.5\"/>\n");
  }

  void text(double x, double y, int size, String anchor, String words) {
    svg.append(format("<text x=\"%s\" y=\"%s\"", x, y));
    svg.append(" font-size=\"").append(size).append("\" text-anchor=\"").append(anchor);
    svg.append("\" fill=\"").append(INK).append("\">").append(escaped(words)).append("</text>\n");
  }

  private static String dashed(String dashes) {
    return dashes.isEmpty() ? "" : " stroke-dasharray=\"" + dashes + "\"";
  }

  /** What a document may say must not become part of the drawing's own code. */
  static String escaped(String words) {
    StringBuilder safe = new StringBuilder();
    words
        .codePoints()
        .filter(Drawing::isPrintable)
        .forEach(
            c -> {
              switch (c) {
                case '&' -> safe.append("&amp;");
                case '<' -> safe.append("&lt;");
                case '>' -> safe.append("&gt;");
                default -> safe.appendCodePoint(c);
              }
            });
    return safe.toString();
  }

  /** Control characters, halves of pairs and the two that XML never allows are left out. */
  private static boolean isPrintable(int character) {
    boolean half = character >= 0xD800 && character <= 0xDFFF;
    return character >= ' ' && !half && character != 0xFFFE && character != 0xFFFF;
  }

  static String shortened(String words, int most) {
    return words.length() <= most ? words : words.substring(0, most - 1) + "…";
  }

  static String format(String pattern, double... numbers) {
    Object[] shown =
        DoubleStream.of(numbers).mapToObj(n -> String.format(Locale.ROOT, "%.2f", n)).toArray();
    return String.format(Locale.ROOT, pattern, shown);
  }
}
