package tamis.engine.pan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
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
        Length layerHeight,
    @Described(
            value = "Cut off the top of each layer to level it, before it is filled",
            atLeast = "0 m",
            atMost = "1 m",
            example = "5 mm")
        @Nullable Length levelled,
    @Described(
            value =
                "Trimmed all around off the layers between the lowest and the highest; cream fills"
                    + " the ring",
            atLeast = "0 m",
            atMost = "1 m",
            example = "1 cm")
        @Nullable Length innerTrim) {
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
    if (levelled != null && levelled.compareTo(layerHeight) >= 0) {
      faults.add(tooMuch("levelled", levelled, "less than the height of a layer, " + layerHeight));
    }
    faults.refuseIfAny();
    double half = narrowest(diameter, side, length, width) / 2;
    if (innerTrim != null && innerTrim.centimetres() >= half) {
      throw new Refusal(tooMuch("innerTrim", innerTrim, "less than half the width of the cake"));
    }
  }

  /** A cake of whole layers. */
  public CakeShape(
      Shape shape,
      @Nullable Length diameter,
      @Nullable Length side,
      @Nullable Length length,
      @Nullable Length width,
      @Nullable Integer layers,
      Length layerHeight) {
    this(shape, diameter, side, length, width, layers, layerHeight, null, null);
  }

  /** A round cake. */
  public static CakeShape round(Length diameter, int layers, Length layerHeight) {
    return new CakeShape(Shape.ROUND, diameter, null, null, null, layers, layerHeight);
  }

  /** How many layers; one unless told. */
  public int layerCount() {
    return layers == null ? 1 : layers;
  }

  /** Height of one layer as it is stacked. */
  public double layerCm() {
    return layerHeight.centimetres() - (levelled == null ? 0 : levelled.centimetres());
  }

  /** Height of all layers without anything between them. */
  public double layersCm() {
    return layerCm() * layerCount();
  }

  /** Its longer side, or its diameter. */
  public double widestCm() {
    return shape == Shape.RECTANGLE
        ? Math.max(cm(length), cm(width))
        : narrowest(diameter, side, length, width);
  }

  /** Its shorter side, or its diameter. */
  public double narrowestCm() {
    return narrowest(diameter, side, length, width);
  }

  /** Its top, in square centimetres. */
  public double topSquareCm() {
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

  /** What is trimmed off the layers between the lowest and the highest, in millilitres. */
  double trimmedMillilitres() {
    int inner = Math.max(0, layerCount() - 2);
    return innerTrim == null ? 0 : -rimSquareCm(-innerTrim.centimetres()) * layerCm() * inner;
  }

  private static double narrowest(@Nullable Length... lengths) {
    return Arrays.stream(lengths)
        .filter(Objects::nonNull)
        .mapToDouble(CakeShape::cm)
        .min()
        .orElseThrow();
  }

  private static Fault tooMuch(String name, Length given, String allowed) {
    return new Fault(
        FaultCode.INCONSISTENT,
        "/" + name,
        given.toString(),
        allowed,
        "`" + name + "` must be " + allowed + ", was " + given);
  }

  private static double cm(@Nullable Length length) {
    return Objects.requireNonNull(length).centimetres();
  }
}
