package tamis.engine.pan;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Nearest;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * What pans hold. A table id answers its published capacity, dimensions answer exact geometry to
 * the rim, and a capacity that the owner measured beats both. Does not change; any number of
 * threads.
 */
public final class Pans {
  private static final Pans STANDARD =
      new Pans(
          TableReader.read(
              Pans.class,
              "/tamis/engine/pans.csv",
              "Pans, tins, trays and containers with what they hold to the rim",
              List.of("pan")));

  private final Table table;
  private final Map<String, StandardPan> byId = new HashMap<>();

  private Pans(Table table) {
    this.table = table;
    for (Row row : table.rows()) {
      StandardPan pan = StandardPan.of(row);
      name(row.key(), pan);
      pan.otherIds().forEach(id -> name(id, pan));
    }
  }

  /** The built-in pans. */
  public static Pans standard() {
    return STANDARD;
  }

  public Table table() {
    return table;
  }

  /**
   * @throws Refusal {@code unknown-pan} if an id is given that no pan has
   */
  public void check(PanRef ref) {
    if (ref.id() != null) {
      find(ref.id());
    }
  }

  /**
   * What it holds to the rim, all hollows of a tray together. Typical is the owner's capacity, else
   * the published one, else exact geometry; where a published capacity and geometry both exist, low
   * and high are the two.
   *
   * @throws Refusal {@code unknown-pan}
   */
  public Spread millilitres(PanRef ref) {
    @Nullable Double geometric = geometricMillilitres(ref);
    Pan pan = described(ref);
    if (pan.capacity() == null) {
      return Spread.exactly(Objects.requireNonNull(geometric)); // Pan has one of the two
    }
    double stated = pan.capacity().millilitres() * pan.hollows();
    return geometric == null || ref.id() == null
        ? Spread.exactly(stated)
        : new Spread(Math.min(stated, geometric), stated, Math.max(stated, geometric));
  }

  /**
   * The same, telling what it rests on.
   *
   * @param place where the pan stands in the input, for remarks
   * @param result the part of the result that rests on it, for the source
   */
  public Spread millilitres(PanRef ref, Notes notes, String place, String result) {
    Spread held = millilitres(ref);
    if (ref.id() != null) {
      StandardPan pan = find(ref.id());
      notes.cite(pan.row(), result);
      PanRemarks.ofStandard(pan, held.typical(), notes, place);
    }
    if (isStraightRing(ref)) {
      PanRemarks.ofStraightRing(held.typical(), notes, place);
    }
    return held;
  }

  /** The capacity in the table, or null if the pan is described or none was published. */
  public @Nullable Double publishedMillilitres(PanRef ref) {
    return ref.id() == null ? null : find(ref.id()).publishedMillilitres();
  }

  /** Exact geometry to the rim, or null if not all inner dimensions are known. */
  public @Nullable Double geometricMillilitres(PanRef ref) {
    Pan pan = described(ref);
    @Nullable Double one = PanGeometry.millilitres(pan);
    return one == null ? null : one * pan.hollows();
  }

  /** The area of the opening at the rim, or null if it is not known. */
  public @Nullable Double areaSquareCm(PanRef ref) {
    Pan pan = described(ref);
    @Nullable Double one = PanGeometry.rimSquareCm(pan);
    return one == null ? null : one * pan.hollows();
  }

  /** How many hollows it has; one unless it is a tray of them. */
  public int cavities(PanRef ref) {
    return described(ref).hollows();
  }

  /** The inner height, or null if it is not known. */
  public @Nullable Double heightCm(PanRef ref) {
    if (ref.id() != null) {
      return find(ref.id()).heightCm();
    }
    Pan pan = described(ref);
    return pan.height() == null ? null : pan.height().centimetres();
  }

  /**
   * How deep a part of what it holds stands in it. Where its capacity and its geometry disagree,
   * the same part of its geometry is taken; where only its height is known, walls are taken as
   * straight. Null if the height is not known.
   *
   * @param part of the capacity, 0 to 1
   */
  public @Nullable Double depthCm(PanRef ref, double part) {
    Pan pan = described(ref);
    @Nullable Double geometric = PanGeometry.millilitres(pan);
    if (geometric != null) {
      return PanGeometry.depthCm(pan, geometric * part);
    }
    @Nullable Double height = heightCm(ref);
    return height == null ? null : height * part;
  }

  private Pan described(PanRef ref) {
    return ref.id() == null ? Objects.requireNonNull(ref.object()) : find(ref.id()).pan();
  }

  private boolean isStraightRing(PanRef ref) {
    Pan pan = described(ref);
    return pan.shape() == Pan.Shape.RING
        && pan.capacity() == null
        && pan.bottom() == null
        && pan.coreBottom() == null;
  }

  private StandardPan find(String id) {
    StandardPan pan = byId.get(id);
    if (pan == null) {
      throw new Refusal(
          new Fault(
              FaultCode.UNKNOWN_PAN,
              "",
              id,
              "an id in the table of pans, such as round-8x2-in, or a shape with its dimensions",
              "no pan `" + id + "` is in the table" + near(id)));
    }
    return pan;
  }

  private String near(String id) {
    String suggestion = Nearest.suggestion(id, byId.keySet());
    return suggestion.isEmpty() ? "; give its shape and dimensions" : suggestion;
  }

  private void name(String id, StandardPan pan) {
    StandardPan earlier = byId.putIfAbsent(id, pan);
    if (earlier != null) {
      throw new BadTable(
          table.name(), pan.row().line(), "also", id + " stands in line " + earlier.row().line());
    }
  }
}
