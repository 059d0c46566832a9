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
    @Described(value = "Bottom diameter of a frustum or ring", moreThan = "0 m", atMost = "5 m")
        @Nullable Length bottom,
    @Described(value = "Inner height", moreThan = "0 m", atMost = "5 m", example = "5 cm")
        @Nullable Length height,
    @Described(
            value = "Water it holds to the rim, measured by its owner; beats every other figure",
            moreThan = "0 ml")
        @Nullable Volume capacity,
    @Described(
            value = "Diameter of the core of a ring at its bottom, if it tapers",
            moreThan = "0 m",
            atMost = "5 m")
        @Nullable Length coreBottom,
    @Described(
            value = "Equal hollows in one tray; dimensions and capacity are those of one hollow",
            atLeast = "1",
            atMost = "1000",
            example = "12")
        @Nullable Integer cavities) {
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
          "coreBottom",
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
    /** Oval with straight sides: two half rounds and what lies between them; may taper. */
    OBLONG(List.of("length", "width", "height"), "bottomLength", "bottomWidth"),
    /** A tube pan: a round less its core; either may taper to the bottom. */
    RING(List.of("diameter", "core", "height"), "bottom", "coreBottom"),
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
        fields(
            diameter,
            core,
            side,
            length,
            width,
            bottomLength,
            bottomWidth,
            top,
            bottom,
            coreBottom,
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
    if (shape == Shape.RING) {
      refuseUnlessLess("core", core, "diameter", diameter, faults);
      Length low = bottom == null ? diameter : bottom;
      Length lowCore = coreBottom == null ? core : coreBottom;
      if (bottom != null || coreBottom != null) {
        String name = coreBottom == null ? "core" : "coreBottom";
        refuseUnlessLess(name, lowCore, bottom == null ? "diameter" : "bottom", low, faults);
      }
    }
    if (shape == Shape.OBLONG) {
      refuseIfMore("width", width, "length", length, faults);
      refuseIfMore(
          "bottomWidth",
          bottomWidth == null ? width : bottomWidth,
          "bottomLength",
          bottomLength == null ? length : bottomLength,
          faults);
    }
    faults.refuseIfAny();
  }

  /** A pan with one hollow and a straight core, if it has one. */
  public Pan(
      @Nullable Shape shape,
      @Nullable Length diameter,
      @Nullable Length core,
      @Nullable Length side,
      @Nullable Length length,
      @Nullable Length width,
      @Nullable Length bottomLength,
      @Nullable Length bottomWidth,
      @Nullable Length top,
      @Nullable Length bottom,
      @Nullable Length height,
      @Nullable Volume capacity) {
    this(
        shape,
        diameter,
        core,
        side,
        length,
        width,
        bottomLength,
        bottomWidth,
        top,
        bottom,
        height,
        capacity,
        null,
        null);
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
        && fields(
                diameter,
                core,
                side,
                length,
                width,
                bottomLength,
                bottomWidth,
                top,
                bottom,
                coreBottom,
                height)
            .hasAll(shape.needed);
  }

  /** How many hollows one tray has; one unless told. */
  int hollows() {
    return cavities == null ? 1 : cavities;
  }

  private static ShapeFields fields(@Nullable Length... lengths) {
    return new ShapeFields(DIMENSIONS, lengths);
  }

  private static void refuseUnlessLess(
      String name,
      @Nullable Length inner,
      String outerName,
      @Nullable Length outer,
      Faults faults) {
    if (inner != null && outer != null && inner.compareTo(outer) >= 0) {
      faults.add(tooWide(name, inner, "less than the " + outerName + ", " + outer));
    }
  }

  private static void refuseIfMore(
      String name,
      @Nullable Length small,
      String largeName,
      @Nullable Length large,
      Faults faults) {
    if (small != null && large != null && small.compareTo(large) > 0) {
      faults.add(tooWide(name, small, "at most the " + largeName + ", " + large));
    }
  }

  private static Fault tooWide(String name, Length given, String allowed) {
    return new Fault(
        FaultCode.INCONSISTENT,
        "/" + name,
        given.toString(),
        allowed,
        "`" + name + "` must be " + allowed + ", was " + given);
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
