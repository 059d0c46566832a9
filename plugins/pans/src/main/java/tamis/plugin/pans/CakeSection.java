package tamis.plugin.pans;

import java.util.LinkedHashMap;
import java.util.Locale;
import java.util.Map;
import tamis.engine.pan.CoatVolumes;

/**
 * Draws a coated cake cut through the middle, to scale: layers, cream between, around and on top.
 * The widest tier or the height of all fills the frame, whichever comes first.
 */
final class CakeSection {
  private static final double FRAME_WIDTH = 460;
  private static final double FRAME_HEIGHT = 320;
  private static final double LEFT = 40;
  private static final double TOP = 70;
  private static final double WIDE = 760;

  private static final String SPONGE = "#c98f5a";
  private static final String CREAM = "#f6ead2";
  private static final String CRUMB = "#e6d2aa";
  private static final String LINE = "#4a3423";

  private final Coating.Result result;
  private final double scale;
  private final double floor;
  private final double middle;
  private final StringBuilder svg = new StringBuilder();

  CakeSection(Coating.Result result) {
    this.result = result;
    double widest =
        result.tiers().stream().mapToDouble(CoatedTier::finishedWidthCm).max().orElseThrow();
    this.scale = Math.min(FRAME_WIDTH / widest, FRAME_HEIGHT / result.heightCm());
    this.floor = TOP + result.heightCm() * scale;
    this.middle = LEFT + FRAME_WIDTH / 2;
  }

  String svg() {
    double high = Math.max(floor + 80, TOP + 250);
    svg.append(
        format(
            "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %s %s\" width=\"%s\""
                + " height=\"%s\" role=\"img\" font-family=\"sans-serif\" fill=\"%s\">%n",
            n(WIDE), n(high), n(WIDE), n(high), LINE));
    svg.append("<title>Cake cut through the middle</title>\n<desc>").append(words());
    svg.append("</desc>\n");
    rectangle("paper", 0, 0, WIDE, high, "#ffffff", false);
    text(LEFT, 34, 18, "start", "Cut through the middle, to scale");
    double bottom = floor;
    for (CoatedTier tier : result.tiers()) {
      bottom = tier(tier, bottom);
    }
    board();
    measures();
    legend();
    return svg.append("</svg>\n").toString();
  }

  private String words() {
    return format(
        "%s cm wide, %s cm high; cream %s ml",
        Named.number(result.widthCm()),
        Named.number(result.heightCm()),
        whole(result.millilitres().total()));
  }

  /** Draws one tier on what is below it and gives the height of its top. */
  private double tier(CoatedTier tier, double bottom) {
    double top = bottom - tier.finishedHeightCm() * scale;
    centred("cream", tier.finishedWidthCm(), top, bottom, CREAM, true);
    double crumbTop = top + tier.topCm() * scale;
    if (tier.crumbCm() > 0) {
      centred("crumb", tier.widthCm() + 2 * tier.crumbCm(), crumbTop, bottom, CRUMB, false);
      double cakeTop = crumbTop + tier.crumbCm() * scale;
      centred("filling", tier.widthCm(), cakeTop, bottom, CREAM, false);
    }
    double at = bottom;
    for (int i = 0; i < tier.layers(); i++) {
      boolean inner = i > 0 && i < tier.layers() - 1;
      double width = tier.widthCm() - (inner ? 2 * tier.innerTrimCm() : 0);
      centred("layer", width, at - tier.layerCm() * scale, at, SPONGE, false);
      at -= (tier.layerCm() + tier.betweenCm()) * scale;
    }
    return top;
  }

  private void board() {
    svg.append(
        format(
            "<rect x=\"%s\" y=\"%s\" width=\"%s\" height=\"5\" rx=\"2\"/>%n",
            n(LEFT - 10), n(floor), n(FRAME_WIDTH + 20)));
  }

  /** The width under the board, the height beside the cake. */
  private void measures() {
    double half = result.widthCm() * scale / 2;
    double y = floor + 26;
    line(middle - half, y, middle + half, y);
    line(middle - half, y - 5, middle - half, y + 5);
    line(middle + half, y - 5, middle + half, y + 5);
    text(middle, y + 22, 14, "middle", Named.number(result.widthCm()) + " cm");
    double x = LEFT + FRAME_WIDTH + 24;
    line(x, TOP, x, floor);
    line(x - 5, TOP, x + 5, TOP);
    line(x - 5, floor, x + 5, floor);
    text(x + 10, (TOP + floor) / 2 + 5, 14, "start", Named.number(result.heightCm()) + " cm");
  }

  private void legend() {
    double x = LEFT + FRAME_WIDTH + 104;
    double y = TOP + 8;
    y = entry(x, y, SPONGE, "layers");
    y = entry(x, y, CREAM, "cream");
    if (result.tiers().stream().anyMatch(tier -> tier.crumbCm() > 0)) {
      y = entry(x, y, CRUMB, "crumb coat");
    }
    y += 14;
    for (Map.Entry<String, Double> row : rows().entrySet()) {
      text(x, y, 13, "start", row.getKey());
      text(WIDE - 20, y, 13, "end", whole(row.getValue()) + " ml");
      y += 20;
    }
    if (result.grams() != null) {
      text(WIDE - 20, y, 13, "end", whole(result.grams()) + " g");
    }
  }

  /** What the cream is for; parts that take none are left out. */
  private Map<String, Double> rows() {
    CoatVolumes cream = result.millilitres();
    Map<String, Double> rows = new LinkedHashMap<>();
    rows.put("top", cream.top());
    rows.put("side", cream.side());
    rows.put("between", cream.between());
    rows.put("crumb coat", cream.crumb());
    rows.put("piping", cream.piping());
    rows.values().removeIf(amount -> amount <= 0);
    rows.put("all cream", cream.total());
    return rows;
  }

  private double entry(double x, double y, String colour, String word) {
    rectangle("key", x, y - 12, 16, 16, colour, true);
    text(x + 24, y + 1, 13, "start", word);
    return y + 24;
  }

  private void centred(
      String what, double widthCm, double top, double bottom, String colour, boolean edge) {
    double width = widthCm * scale;
    rectangle(what, middle - width / 2, top, width, bottom - top, colour, edge);
  }

  private void rectangle(
      String what, double x, double y, double width, double height, String colour, boolean edge) {
    svg.append(
        format(
            "<rect class=\"%s\" x=\"%s\" y=\"%s\" width=\"%s\" height=\"%s\" fill=\"%s\"%s/>%n",
            what,
            n(x),
            n(y),
            n(width),
            n(height),
            colour,
            edge ? " stroke=\"" + LINE + "\" stroke-width=\"1\"" : ""));
  }

  private void line(double x1, double y1, double x2, double y2) {
    svg.append(
        format(
            "<line x1=\"%s\" y1=\"%s\" x2=\"%s\" y2=\"%s\" stroke=\"%s\"/>%n",
            n(x1), n(y1), n(x2), n(y2), LINE));
  }

  private void text(double x, double y, int size, String anchor, String words) {
    svg.append(
        format(
            "<text x=\"%s\" y=\"%s\" font-size=\"%d\" text-anchor=\"%s\">%s</text>%n",
            n(x), n(y), size, anchor, words));
  }

  private static String whole(double amount) {
    return String.format(Locale.ROOT, "%.0f", amount);
  }

  private static String n(double pixels) {
    return String.format(Locale.ROOT, "%.2f", pixels);
  }

  private static String format(String pattern, Object... values) {
    return String.format(Locale.ROOT, pattern.replace("%n", "\n"), values);
  }
}
