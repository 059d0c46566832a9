package tamis.engine.pan;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Length;
import tamis.engine.record.Described;

/** A bare cake of equal layers, before it is filled and coated. */
public record CakeShape(
    @Described(value = "Shape seen from above", example = "round") Shape shape,
    @Described(
            value = "Diameter of a round cake",
            moreThan = "0 m",
            atMost = "5 m",
            example = "20 cm")
        @Nullable Length diameter,
    @Described(value = "Side of a square cake", moreThan = "0 m", atMost = "5 m")
        @Nullable Length side,
    @Described(value = "Length of a rectangular cake", moreThan = "0 m", atMost = "5 m")
        @Nullable Length length,
    @Described(value = "Width of a rectangular cake", moreThan = "0 m", atMost = "5 m")
        @Nullable Length width,
    @Described(value = "Layers; one unless told", atLeast = "1", atMost = "100", example = "2")
        @Nullable Integer layers,
    @Described(value = "Height of one layer", moreThan = "0 m", atMost = "5 m", example = "4 cm")
        Length layerHeight) {
  private static final List<String> DIMENSIONS = List.of("diameter", "side", "length", "width");

  /** Shapes seen from above. */
  public enum Shape {
    ROUND(List.of("diameter")),
    SQUARE(List.of("side")),
    RECTANGLE(List.of("length", "width"));

    @SuppressWarnings("ImmutableEnumChecker") // List.of does not change
    private final List<String> needed;

    Shape(List<String> needed) {
      this.needed = needed;
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public CakeShape {
    ShapeFields fields = new ShapeFields(DIMENSIONS, diameter, side, length, width);
    Faults faults = new Faults();
    String cake = shape + " cake";
    fields.refuseForeign(cake, shape.needed, List.of(), faults);
    fields.refuseMissing(cake, shape.needed, faults);
    faults.refuseIfAny();
  }

  /** A round cake. */
  public static CakeShape round(Length diameter, int layers, Length layerHeight) {
    return new CakeShape(Shape.ROUND, diameter, null, null, null, layers, layerHeight);
  }

  /** How many layers; one unless told. */
  public int layerCount() {
    return layers == null ? 1 : layers;
  }

  /** Its top, in square centimetres. */
  double topSquareCm() {
    return switch (shape) {
      case ROUND -> Math.PI * cm(diameter) * cm(diameter) / 4;
      case SQUARE -> cm(side) * cm(side);
      case RECTANGLE -> cm(length) * cm(width);
    };
  }

  /** What a coat of {@code thickness} adds around it, seen from above; corners stay sharp. */
  double rimSquareCm(double thickness) {
    return switch (shape) {
      case ROUND -> Math.PI * thickness * (cm(diameter) + thickness);
      case SQUARE -> 4 * thickness * (cm(side) + thickness);
      case RECTANGLE -> 2 * thickness * (cm(length) + cm(width) + 2 * thickness);
    };
  }

  private static double cm(@Nullable Length length) {
    return Objects.requireNonNull(length).centimetres();
  }
}
