package tamis.engine.pan;

import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Volume;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;

/**
 * One row of the table of pans.
 *
 * @param row the row
 * @param pan what it says; its capacity is the published one
 */
record StandardPan(Row row, Pan pan) {

  /**
   * @throws BadTable if the row tells no volume, or not the dimensions of its shape
   */
  static StandardPan of(Row row) {
    try {
      return new StandardPan(row, pan(row));
    } catch (Refusal unusable) {
      throw new BadTable(row.table(), row.line(), "shape", unusable.faults().get(0).message());
    }
  }

  /** Other ids under which the pan is found. */
  List<String> otherIds() {
    String also = row.textOrNull("also");
    return also == null ? List.of() : Arrays.asList(also.split(";"));
  }

  /** Of all hollows together. */
  @Nullable Double publishedMillilitres() {
    return pan.capacity() == null ? null : pan.capacity().millilitres() * pan.hollows();
  }

  @Nullable Double geometricMillilitres() {
    @Nullable Double one = PanGeometry.millilitres(pan);
    return one == null ? null : one * pan.hollows();
  }

  @Nullable Double heightCm() {
    return row.numberOrNull("height_cm");
  }

  /** Litres of gastronorm containers differ by maker: only the outer rim is a standard. */
  boolean differsByMaker() {
    return row.text("kind").equals("gastronorm");
  }

  private static Pan pan(Row row) {
    Double published = row.numberOrNull("capacity_ml");
    Volume capacity = published == null ? null : Volume.ofMillilitres(published);
    Pan.Shape shape = shape(row);
    Length diameter = shape == null ? null : length(row, "diameter_cm");
    boolean square = shape == Pan.Shape.SQUARE;
    boolean frustum = shape == Pan.Shape.FRUSTUM;
    @Nullable Double cavities = row.numberOrNull("cavities");
    return new Pan(
        shape,
        frustum ? null : diameter,
        length(row, "core_cm"),
        square ? length(row, "length_cm") : null,
        square ? null : length(row, "length_cm"),
        square ? null : length(row, "width_cm"),
        null,
        null,
        frustum ? diameter : null,
        length(row, "bottom_diameter_cm"),
        shape == null ? null : length(row, "height_cm"),
        capacity,
        null,
        cavities == null ? null : cavities.intValue());
  }

  private static Pan.@Nullable Shape shape(Row row) {
    String word = row.textOrNull("shape");
    if (word == null) {
      return null;
    }
    for (Pan.Shape shape : Pan.Shape.values()) {
      if (shape.toString().equals(word.toLowerCase(Locale.ROOT))) {
        return shape;
      }
    }
    throw new BadTable(row.table(), row.line(), "shape", "is no shape: " + word);
  }

  private static @Nullable Length length(Row row, String column) {
    Double centimetres = row.numberOrNull(column);
    return centimetres == null ? null : Length.ofCentimetres(centimetres);
  }
}
