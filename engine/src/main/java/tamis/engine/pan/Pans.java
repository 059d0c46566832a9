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
import tamis.engine.quantity.Volume;
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
  /** Printed capacities are rounded down by up to a sixth; more than this is another dish. */
  private static final double DOUBTFUL = 0.25;

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
   * What it holds to the rim. Typical is the owner's capacity, else the published one, else exact
   * geometry; where a published capacity and geometry both exist, low and high are the two.
   *
   * @throws Refusal {@code unknown-pan}
   */
  public Spread millilitres(PanRef ref) {
    Double geometric = geometricMillilitres(ref);
    Volume capacity = described(ref).capacity();
    if (capacity == null) {
      return Spread.exactly(Objects.requireNonNull(geometric)); // Pan has one of the two
    }
    double stated = capacity.millilitres();
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
      remark(pan, held.typical(), notes, place);
    }
    if (isStraightRing(ref)) {
      notes.remark(
          "ring-straight",
          place,
          "the ring is taken as straight-walled, "
              + ml(held.typical())
              + "; with a half-round bottom it holds "
              + ml(held.typical() * PanGeometry.halfRoundPart())
              + ": give its `capacity`");
    }
    return held;
  }

  /** The capacity in the table, or null if the pan is described or none was published. */
  public @Nullable Double publishedMillilitres(PanRef ref) {
    return ref.id() == null ? null : find(ref.id()).publishedMillilitres();
  }

  /** Exact geometry to the rim, or null if not all inner dimensions are known. */
  public @Nullable Double geometricMillilitres(PanRef ref) {
    return PanGeometry.millilitres(described(ref));
  }

  /** The area of the opening at the rim, or null if it is not known. */
  public @Nullable Double areaSquareCm(PanRef ref) {
    return PanGeometry.rimSquareCm(described(ref));
  }

  /** The inner height, or null if it is not known. */
  public @Nullable Double heightCm(PanRef ref) {
    if (ref.id() != null) {
      return find(ref.id()).heightCm();
    }
    Pan pan = described(ref);
    return pan.height() == null ? null : pan.height().centimetres();
  }

  private Pan described(PanRef ref) {
    return ref.id() == null ? Objects.requireNonNull(ref.object()) : find(ref.id()).pan();
  }

  private boolean isStraightRing(PanRef ref) {
    Pan pan = described(ref);
    return pan.shape() == Pan.Shape.RING && pan.capacity() == null;
  }

  private static void remark(StandardPan pan, double held, Notes notes, String place) {
    String id = pan.row().key();
    if (pan.differsByMaker()) {
      notes.estimate(
          "capacity-differs-by-maker",
          place,
          id + " holds " + ml(held) + " in one maker's list; the standard fixes the rim only");
    }
    Double straight = PanGeometry.millilitres(pan.pan());
    if (straight != null && Math.abs(straight - held) > DOUBTFUL * held) {
      notes.estimate(
          "capacity-doubtful",
          place,
          id
              + " is published with "
              + ml(held)
              + " but its straight walls would hold "
              + ml(straight)
              + ": fill yours with water and give its `capacity`");
    }
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

  private static String ml(double millilitres) {
    return Math.round(millilitres) + " ml";
  }
}
