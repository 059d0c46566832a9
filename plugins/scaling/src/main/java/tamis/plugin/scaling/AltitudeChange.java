package tamis.plugin.scaling;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Spread;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How a shortened cake is changed at altitude, by the published table. Between its rows, and below
 * the first, the change is taken in proportion; the source does not say so, so it is an estimate.
 */
final class AltitudeChange {
  static final Table TABLE =
      TableReader.read(
          AltitudeChange.class,
          "/tamis/plugin/scaling/altitude-cake.csv",
          "Changes of shortened cakes at altitude, in percent of each ingredient",
          List.of("group", "height_ft"));
  private static final double METRES_PER_FOOT = 0.3048;

  /** Grams in 100 g; evaporated milk has less. */
  private static final double POURED_MILK_WATER = 80;

  private final double feet;
  private final Notes notes;

  private AltitudeChange(double feet, Notes notes) {
    this.feet = feet;
    this.notes = notes;
  }

  /** The change at a height, with what must be said of it; at sea level and below there is none. */
  static @Nullable AltitudeChange at(@Nullable Length height, Notes notes) {
    if (height == null || height.metres() <= 0) {
      return null;
    }
    AltitudeChange change = new AltitudeChange(feet(height), notes);
    notes.estimate(
        "altitude-table",
        "/altitude",
        "the change at altitude is published for shortened cakes and taken in proportion between"
            + " its rows; try one cake first");
    double highest = highestFeet();
    if (change.feet > highest) {
      notes.estimate(
          "beyond-table",
          "/altitude",
          String.format(
              Locale.ROOT,
              "the table ends at %.0f ft (%.0f m); its last row is used above",
              highest,
              highest * METRES_PER_FOOT));
    }
    return change;
  }

  /** The batch as it is mixed at this height. */
  Batch of(Batch batch) {
    return batch.withGrams(this::grams);
  }

  private Spread grams(BatchLine line) {
    @Nullable Change change = change(line.ingredient());
    return change == null ? line.grams() : line.grams().times(1 + change.percent() / 100);
  }

  /** The change in percent, or null if the table has none for this ingredient. */
  @Nullable Double percent(Ingredient ingredient, String pointer) {
    @Nullable Change change = change(ingredient);
    if (change == null) {
      return null;
    }
    change.rows().forEach(row -> notes.cite(row, pointer));
    return change.percent();
  }

  /** A change in percent, by one row or by the two that the height lies between. */
  private record Change(double percent, List<Row> rows) {}

  private @Nullable Change change(Ingredient ingredient) {
    @Nullable String group = group(ingredient);
    Change below = new Change(0, List.of());
    double belowFeet = 0;
    for (Row row : group == null ? List.<Row>of() : rows(group)) {
      double height = row.number("height_ft");
      Change here = new Change(row.number("change_percent"), List.of(row));
      if (feet < height) {
        return between(below, here, (feet - belowFeet) / (height - belowFeet));
      }
      below = here;
      belowFeet = height;
    }
    return below.rows().isEmpty() ? null : below;
  }

  private static Change between(Change below, Change above, double part) {
    if (part == 0 && !below.rows().isEmpty()) {
      return below;
    }
    List<Row> rows = new ArrayList<>(below.rows());
    rows.addAll(above.rows());
    return new Change(below.percent() + (above.percent() - below.percent()) * part, rows);
  }

  /** To a millionth, so that 7500 ft are not a little more after metres. */
  private static double feet(Length height) {
    return Math.rint(height.metres() / METRES_PER_FOOT * 1e6) / 1e6;
  }

  private static double highestFeet() {
    return TABLE.rows().stream().mapToDouble(row -> row.number("height_ft")).max().orElseThrow();
  }

  private static List<Row> rows(String group) {
    List<Row> rows = new ArrayList<>(TABLE.rows());
    rows.removeIf(row -> !row.text("group").equals(group));
    return rows;
  }

  private static @Nullable String group(Ingredient ingredient) {
    if (ingredient.isFlour()) {
      return "flour";
    }
    if (ingredient.id().startsWith("baking-powder")) {
      return "baking-powder";
    }
    @Nullable String kind = ingredient.kind();
    if (kind == null) {
      return null;
    }
    return switch (kind) {
      case "egg", "sugar", "fat" -> kind;
      case "water", "juice" -> "liquid";
      case "dairy" -> isMilk(ingredient) ? "liquid" : null;
      default -> null;
    };
  }

  /** Milk and buttermilk as they are poured: neither powder nor cream. */
  private static boolean isMilk(Ingredient ingredient) {
    @Nullable Double water = ingredient.per100g(Nutrient.WATER);
    boolean milk = ingredient.id().startsWith("milk") || ingredient.id().startsWith("buttermilk");
    return milk && water != null && water > POURED_MILK_WATER;
  }
}
