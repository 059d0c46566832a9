package tamis.plugin.trials;

import java.util.List;

/**
 * How the readings of one trial are drawn: by place in the list, so that shapes, dashes and filling
 * come back together only after many trials. The colours are told apart by most eyes (Okabe and Ito
 * 2008), but nothing rests on them.
 */
record TrialMark(int place) {
  private static final List<String> COLOURS =
      List.of("#0072b2", "#d55e00", "#009e73", "#7a4fa3", "#a0522d", "#333333");
  private static final List<String> DASHES = List.of("", "7 4", "2 3", "10 3 2 3", "14 5");
  private static final int SHAPES = 6;

  String colour() {
    return COLOURS.get(place % COLOURS.size());
  }

  String dashes() {
    return DASHES.get(place % DASHES.size());
  }

  boolean filled() {
    return place / SHAPES % 2 == 0;
  }

  /** The outline around a middle. */
  String path(double x, double y) {
    double r = 5;
    return switch (place % SHAPES) {
      case 0 ->
          Drawing.format(
              "M%s %sa%s %s 0 1 0 %s 0a%s %s 0 1 0 %s 0Z", x - r, y, r, r, 2 * r, r, r, -2 * r);
      case 1 -> shape(x - r, y - r, x + r, y - r, x + r, y + r, x - r, y + r);
      case 2 -> shape(x, y - r - 1, x + r + 1, y + r, x - r - 1, y + r);
      case 3 -> shape(x, y - r - 2, x + r + 2, y, x, y + r + 2, x - r - 2, y);
      case 4 -> shape(x, y + r + 1, x + r + 1, y - r, x - r - 1, y - r);
      default ->
          shape(
              x - 2, y - r - 1, x + 2, y - r - 1, x + 2, y - 2, x + r + 1, y - 2, x + r + 1, y + 2,
              x + 2, y + 2, x + 2, y + r + 1, x - 2, y + r + 1, x - 2, y + 2, x - r - 1, y + 2,
              x - r - 1, y - 2, x - 2, y - 2);
    };
  }

  private static String shape(double... corners) {
    StringBuilder path = new StringBuilder();
    for (int i = 0; i < corners.length; i += 2) {
      path.append(Drawing.format(i == 0 ? "M%s %s" : "L%s %s", corners[i], corners[i + 1]));
    }
    return path.append('Z').toString();
  }
}
