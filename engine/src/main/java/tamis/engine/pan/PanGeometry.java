package tamis.engine.pan;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Length;

/**
 * Exact volumes to the rim and areas at the rim, of inner dimensions. Formulas of solid geometry;
 * centimetres in, so that cubic centimetres are millilitres.
 */
final class PanGeometry {
  private PanGeometry() {}

  /** The volume to the rim, or null unless all dimensions of the shape are known. */
  static @Nullable Double millilitres(Pan pan) {
    Pan.Shape shape = pan.shape();
    if (shape == null || !pan.isMeasured()) {
      return null;
    }
    double height = cm(pan.height());
    return switch (shape) {
      case ROUND -> disc(cm(pan.diameter())) * height;
      case SQUARE -> cm(pan.side()) * cm(pan.side()) * height;
      case RECTANGLE, LOAF -> prismoid(pan, height);
      case TRAY -> cm(pan.length()) * cm(pan.width()) * height;
      case FRUSTUM -> frustum(cm(pan.top()), cm(pan.bottom()), height);
      case RING -> ring(cm(pan.diameter()), cm(pan.core())) * height;
      case DOME -> dome(cm(pan.diameter()) / 2, height);
    };
  }

  /** The area of the opening, or null if the dimensions that it needs are not known. */
  static @Nullable Double rimSquareCm(Pan pan) {
    Pan.Shape shape = pan.shape();
    if (shape == null) {
      return null;
    }
    return switch (shape) {
      case ROUND, DOME -> discOrNull(pan.diameter());
      case FRUSTUM -> discOrNull(pan.top());
      case SQUARE -> productOrNull(pan.side(), pan.side());
      case RECTANGLE, LOAF, TRAY -> productOrNull(pan.length(), pan.width());
      case RING ->
          pan.diameter() == null || pan.core() == null
              ? null
              : ring(cm(pan.diameter()), cm(pan.core()));
    };
  }

  /**
   * The part of a straight-walled ring that a ring of the same width and height with a half-round
   * bottom holds: its section is half an ellipse, π/4 of the rectangle around it, on the same
   * middle circle (Pappus). A half torus is the case in which the height is half the width.
   */
  static double halfRoundPart() {
    return Math.PI / 4;
  }

  /** Straight between two rectangles: h/6 (top + bottom + 4 × the section halfway). */
  private static double prismoid(Pan pan, double height) {
    double length = cm(pan.length());
    double width = cm(pan.width());
    double bottomLength = pan.bottomLength() == null ? length : cm(pan.bottomLength());
    double bottomWidth = pan.bottomWidth() == null ? width : cm(pan.bottomWidth());
    double middle = (length + bottomLength) / 2 * (width + bottomWidth) / 2;
    return height / 6 * (length * width + bottomLength * bottomWidth + 4 * middle);
  }

  private static double frustum(double top, double bottom, double height) {
    return Math.PI * height / 12 * (top * top + top * bottom + bottom * bottom);
  }

  /**
   * A cap of a sphere as long as it is no deeper than half a sphere. A mould deeper than that does
   * not bulge, as a larger cap would, or nothing would come out of it: half an ellipsoid. Both are
   * half a sphere where they meet.
   */
  private static double dome(double radius, double height) {
    return height <= radius
        ? Math.PI * height / 6 * (3 * radius * radius + height * height)
        : Math.PI * 2 / 3 * radius * radius * height;
  }

  private static double ring(double diameter, double core) {
    return disc(diameter) - disc(core);
  }

  private static double disc(double diameter) {
    return Math.PI * diameter * diameter / 4;
  }

  private static @Nullable Double discOrNull(@Nullable Length diameter) {
    return diameter == null ? null : disc(cm(diameter));
  }

  private static @Nullable Double productOrNull(@Nullable Length one, @Nullable Length other) {
    return one == null || other == null ? null : cm(one) * cm(other);
  }

  private static double cm(@Nullable Length length) {
    return Objects.requireNonNull(length).centimetres();
  }
}
