package tamis.plugin.scaling;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
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

  private final double feet;
  private final Notes notes;

  AltitudeChange(double metres, Notes notes) {
    this.feet = metres / METRES_PER_FOOT;
    this.notes = notes;
  }

  /** The change in percent, or null if the table has none for this ingredient. */
  @Nullable Double percent(Ingredient ingredient, String pointer) {
    @Nullable String group = group(ingredient);
    if (group == null || feet <= 0) {
      return null;
    }
    double lowerFeet = 0;
    double lower = 0;
    for (Row row : rows(group)) {
      double height = row.number("height_ft");
      double change = row.number("change_percent");
      if (feet <= height) {
        notes.cite(row, pointer);
        return lower + (change - lower) * (feet - lowerFeet) / (height - lowerFeet);
      }
      lowerFeet = height;
      lower = change;
    }
    return lower;
  }

  /** The greatest height of the table, in metres. */
  static double highestMetres() {
    return TABLE.rows().stream().mapToDouble(row -> row.number("height_ft")).max().orElseThrow()
        * METRES_PER_FOOT;
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
      case "dairy" ->
          ingredient.id().startsWith("milk") || ingredient.id().startsWith("buttermilk")
              ? "liquid"
              : null;
      default -> null;
    };
  }
}
