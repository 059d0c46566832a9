package tamis.engine.pan;

import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Volume;
import tamis.engine.record.Described;

/** A pan by its shape and inner dimensions, or by the water it holds. */
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
  /** Shapes with exact geometry. */
  public enum Shape {
    ROUND,
    SQUARE,
    RECTANGLE,
    LOAF,
    FRUSTUM,
    RING,
    DOME,
    TRAY
  }
}
