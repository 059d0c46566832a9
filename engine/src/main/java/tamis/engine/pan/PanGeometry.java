package tamis.engine.pan;

import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Length;

/**
 * Exact volumes to the rim, or to a depth, and areas at the rim, of the inner dimensions of one
 * hollow; centimetres in, so that cubic centimetres are millilitres. The section of every shape is
 * at most quadratic in the height, so that the prismoid rule h/6 (bottom + top + 4 × the section
 * halfway) is exact for all of them: cones, truncated pyramids, caps of spheres, half ellipsoids.
 */
final class PanGeometry {
  private static final int HALVINGS = 60;

  private PanGeometry() {}

  /** The volume to the rim, or null unless all dimensions of the shape are known. */
  static @Nullable Double millilitres(Pan pan) {
    return pan.isMeasured() ? millilitresTo(pan, 1) : null;
  }

  /** How deep so much stands in it, or null unless all dimensions of the shape are known. */
  static @Nullable Double depthCm(Pan pan, double millilitres) {
    if (!pan.isMeasured()) {
      return null;
    }
    double low = 0;
    double high = 1;
    for (int i = 0; i < HALVINGS; i++) {
      double middle = (low + high) / 2;
      if (millilitresTo(pan, middle) < millilitres) {
        low = middle;
      } else {
        high = middle;
      }
    }
    return high * cm(pan.height());
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
      case SQUARE -> pan.side() == null ? null : cm(pan.side()) * cm(pan.side());
      case RECTANGLE, LOAF, TRAY ->
          pan.length() == null || pan.width() == null ? null : cm(pan.length()) * cm(pan.width());
      case OBLONG ->
          pan.length() == null || pan.width() == null
              ? null
              : oblong(cm(pan.length()), cm(pan.width()));
      case RING ->
          pan.diameter() == null || pan.core() == null
              ? null
              : disc(cm(pan.diameter())) - disc(cm(pan.core()));
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

  /** The volume up to a part of the height. */
  private static double millilitresTo(Pan pan, double part) {
    double depth = part * cm(pan.height());
    return depth
        / 6
        * (sectionSquareCm(pan, 0)
            + 4 * sectionSquareCm(pan, part / 2)
            + sectionSquareCm(pan, part));
  }

  /** The section at a part of the height: 0 the bottom, 1 the rim. */
  private static double sectionSquareCm(Pan pan, double at) {
    Pan.Shape shape = Objects.requireNonNull(pan.shape());
    return switch (shape) {
      case ROUND -> disc(cm(pan.diameter()));
      case SQUARE -> cm(pan.side()) * cm(pan.side());
      case TRAY -> cm(pan.length()) * cm(pan.width());
      case RECTANGLE, LOAF ->
          between(pan.bottomLength(), pan.length(), at)
              * between(pan.bottomWidth(), pan.width(), at);
      case OBLONG ->
          oblong(
              between(pan.bottomLength(), pan.length(), at),
              between(pan.bottomWidth(), pan.width(), at));
      case FRUSTUM -> disc(between(pan.bottom(), pan.top(), at));
      case RING ->
          disc(between(pan.bottom(), pan.diameter(), at))
              - disc(between(pan.coreBottom(), pan.core(), at));
      case DOME -> dome(cm(pan.diameter()) / 2, cm(pan.height()), at);
    };
  }

  /** Straight from the bottom to the rim; straight up if no bottom is told. */
  private static double between(@Nullable Length bottom, @Nullable Length rim, double at) {
    double upper = cm(rim);
    return bottom == null ? upper : cm(bottom) + (upper - cm(bottom)) * at;
  }

  /**
   * A cap of a sphere as long as it is no deeper than half a sphere. A mould deeper than that does
   * not bulge, as a larger cap would, or nothing would come out of it: half an ellipsoid. Both are
   * half a sphere where they meet.
   */
  private static double dome(double radius, double height, double at) {
    double depth = at * height;
    if (height <= radius) {
      double sphere = (radius * radius + height * height) / (2 * height);
      return Math.PI * (2 * sphere * depth - depth * depth);
    }
    return Math.PI * radius * radius * (1 - (1 - at) * (1 - at));
  }

  /** Two half rounds with a rectangle between them. */
  private static double oblong(double length, double width) {
    return disc(width) + (length - width) * width;
  }

  private static double disc(double diameter) {
    return Math.PI * diameter * diameter / 4;
  }

  private static @Nullable Double discOrNull(@Nullable Length diameter) {
    return diameter == null ? null : disc(cm(diameter));
  }

  private static double cm(@Nullable Length length) {
    return Objects.requireNonNull(length).centimetres();
  }
}
