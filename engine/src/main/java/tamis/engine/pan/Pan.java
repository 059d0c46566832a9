package tamis.engine.pan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Volume;
import tamis.engine.record.Described;

/**
 * A pan by its shape and inner dimensions, or by the water it holds. With a capacity, dimensions
 * may be left out; a dimension that the shape does not have is always a fault.
 */
public record Pan(
    @Described(value = "Shape", example = "round") @Nullable Shape shape,
    @Described(
            value = "Diameter of a round, ring or dome",
            moreThan = "0 m",
            atMost = "5 m",
            example = "20 cm")
        @Nullable Length diameter,
    @Described(value = "Diameter of the core of a ring", moreThan = "0 m", atMost = "5 m")
        @Nullable Length core,
    @Described(value = "Side of a square", moreThan = "0 m", atMost = "5 m") @Nullable Length side,
    @Described(value = "Length at the top", moreThan = "0 m", atMost = "5 m")
        @Nullable Length length,
    @Described(value = "Width at the top", moreThan = "0 m", atMost = "5 m") @Nullable Length width,
    @Described(value = "Length at the bottom, if it tapers", moreThan = "0 m", atMost = "5 m")
        @Nullable Length bottomLength,
    @Described(value = "Width at the bottom, if it tapers", moreThan = "0 m", atMost = "5 m")
        @Nullable Length bottomWidth,
    @Described(value = "Top diameter of a frustum", moreThan = "0 m", atMost = "5 m")
        @Nullable Length top,
    @Described(value = "Bottom diameter of a frustum", moreThan = "0 m", atMost = "5 m")
        @Nullable Length bottom,
    @Described(value = "Inner height", moreThan = "0 m", atMost = "5 m", example = "5 cm")
        @Nullable Length height,
    @Described(
            value = "Water it holds to the rim, measured by its owner; beats every other figure",
            moreThan = "0 ml")
        @Nullable Volume capacity) {
  private static final List<String> DIMENSIONS =
      List.of(
          "diameter",
          "core",
          "side",
          "length",
          "width",
          "bottomLength",
          "bottomWidth",
          "top",
          "bottom",
          "height");

  /** Shapes with exact geometry. */
  public enum Shape {
    /** Straight-walled. */
    ROUND(List.of("diameter", "height")),
    /** Straight-walled. */
    SQUARE(List.of("side", "height")),
    /** Straight, or tapering to a smaller or larger bottom. */
    RECTANGLE(List.of("length", "width", "height"), "bottomLength", "bottomWidth"),
    /** As a rectangle. */
    LOAF(List.of("length", "width", "height"), "bottomLength", "bottomWidth"),
    /** Round and tapering: part of a cone. */
    FRUSTUM(List.of("top", "bottom", "height")),
    /** A tube pan: a straight-walled round less a straight-walled core. */
    RING(List.of("diameter", "core", "height")),
    /** Cap of a sphere; half an ellipsoid if it is deeper than half a sphere. */
    DOME(List.of("diameter", "height")),
    /** Straight-walled. */
    TRAY(List.of("length", "width", "height"));

    @SuppressWarnings("ImmutableEnumChecker") // List.of does not change
    private final List<String> needed;

    @SuppressWarnings("ImmutableEnumChecker") // List.of does not change
    private final List<String> optional;

    Shape(List<String> needed, String... optional) {
      this.needed = needed;
      this.optional = List.of(optional);
    }

    @Override
    public String toString() {
      return name().toLowerCase(Locale.ROOT);
    }
  }

  public Pan {
    ShapeFields fields =
        new ShapeFields(
            DIMENSIONS,
            diameter,
            core,
            side,
            length,
            width,
            bottomLength,
            bottomWidth,
            top,
            bottom,
            height);
    Faults faults = new Faults();
    if (shape != null) {
      fields.refuseForeign(shape + " pan", shape.needed, shape.optional, faults);
      if (capacity == null) {
        fields.refuseMissing(shape + " pan", shape.needed, faults);
      }
    } else if (capacity == null || !fields.isEmpty()) {
      faults.add(shapeMissing());
    }
    if (shape == Shape.RING && diameter != null && core != null && core.compareTo(diameter) >= 0) {
      faults.add(
          new Fault(
              FaultCode.INCONSISTENT,
              "/core",
              core.toString(),
              "less than the diameter, " + diameter,
              "`core` must be less than the diameter, " + diameter + ", was " + core));
    }
    faults.refuseIfAny();
  }

  /** A straight-walled round. */
  public static Pan round(Length diameter, Length height) {
    return new Pan(
        Shape.ROUND, diameter, null, null, null, null, null, null, null, null, height, null);
  }

  /** A straight-walled rectangle. */
  public static Pan rectangle(Length length, Length width, Length height) {
    return new Pan(
        Shape.RECTANGLE, null, null, null, length, width, null, null, null, null, height, null);
  }

  /** Any pan of which only the water it holds is known. */
  public static Pan ofCapacity(Volume capacity) {
    return new Pan(null, null, null, null, null, null, null, null, null, null, null, capacity);
  }

  /** Whether all dimensions of its shape are known. */
  boolean isMeasured() {
    return shape != null
        && new ShapeFields(
                DIMENSIONS,
                diameter,
                core,
                side,
                length,
                width,
                bottomLength,
                bottomWidth,
                top,
                bottom,
                height)
            .hasAll(shape.needed);
  }

  private static Fault shapeMissing() {
    String shapes =
        Arrays.stream(Shape.values()).map(Shape::toString).collect(Collectors.joining(", "));
    return new Fault(
        FaultCode.MISSING,
        "/shape",
        null,
        shapes,
        "`shape` is missing: a pan needs a shape with its dimensions, or `capacity` alone; shapes"
            + " are "
            + shapes);
  }
}
