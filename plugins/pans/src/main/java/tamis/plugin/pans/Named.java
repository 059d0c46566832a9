package tamis.plugin.pans;

import java.math.BigDecimal;
import java.math.RoundingMode;
import tamis.engine.pan.CakeShape;
import tamis.engine.quantity.Length;
import tamis.engine.table.Row;

/** Cakes in words, and cakes of the table. */
final class Named {
  private Named() {}

  /** {@code round 20 cm, 3 layers of 2.5 cm}. */
  static String of(CakeShape cake) {
    int layers = cake.layerCount();
    return outline(cake)
        + ", "
        + layers
        + (layers == 1 ? " layer of " : " layers of ")
        + number(cake.layerCm())
        + " cm";
  }

  /** {@code round 20 cm}, {@code rectangle 60 × 40 cm}. */
  static String outline(CakeShape cake) {
    String size =
        cake.shape() == CakeShape.Shape.RECTANGLE
            ? number(cake.widestCm()) + " × " + number(cake.narrowestCm())
            : number(cake.widestCm());
    return cake.shape() + " " + size + " cm";
  }

  /** To a millimetre. */
  static String number(double centimetres) {
    return BigDecimal.valueOf(centimetres)
        .setScale(1, RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }

  static CakeShape cake(Row row) {
    boolean round = row.text("shape").equals("round");
    Length width = Length.ofCentimetres(row.number("width_cm"));
    return new CakeShape(
        round ? CakeShape.Shape.ROUND : CakeShape.Shape.SQUARE,
        round ? width : null,
        round ? null : width,
        null,
        null,
        (int) row.number("layers"),
        Length.ofCentimetres(row.number("layer_height_cm")));
  }
}
