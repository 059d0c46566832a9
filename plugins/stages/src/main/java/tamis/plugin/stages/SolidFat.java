package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import org.hipparchus.analysis.interpolation.LinearInterpolator;
import org.hipparchus.analysis.polynomials.PolynomialSplineFunction;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * How much of a fat is solid at a temperature, and the heat that its melting takes. Below the first
 * figure of a curve nothing more is taken to set.
 */
final class SolidFat {
  static final Table CURVES =
      TableReader.read(
          SolidFat.class,
          "/tamis/plugin/stages/solid-fat.csv",
          "Part of a fat that is solid, by temperature",
          List.of("fat", "celsius"));
  static final Table HEATS =
      TableReader.read(
          SolidFat.class,
          "/tamis/plugin/stages/fat-heat.csv",
          "Heat that the melting of a fat takes",
          List.of("fat"));

  private static final SolidFat MILK = new SolidFat(FatKind.MILK);
  private static final SolidFat COCOA = new SolidFat(FatKind.COCOA);

  private final PolynomialSplineFunction curve;
  private final Row heat;
  private final double coldest;
  private final double hottest;
  private final double most;

  private SolidFat(FatKind kind) {
    List<Row> rows = new ArrayList<>(CURVES.rows());
    rows.removeIf(row -> !row.text("fat").equals(kind.toString()));
    double[] celsius = rows.stream().mapToDouble(row -> row.number("celsius")).toArray();
    double[] solid = rows.stream().mapToDouble(row -> row.number("solid_percent")).toArray();
    this.curve = new LinearInterpolator().interpolate(celsius, solid);
    this.coldest = celsius[0];
    this.hottest = celsius[celsius.length - 1];
    this.most = solid[0];
    @Nullable Row row = HEATS.row(kind.toString());
    if (row == null) {
      throw new BadTable(HEATS.name(), 1, "fat", kind + " is missing");
    }
    this.heat = row;
  }

  /** The curve of a fat, or null if it is always liquid. */
  static @Nullable SolidFat of(FatKind kind) {
    return switch (kind) {
      case MILK -> MILK;
      case COCOA -> COCOA;
      case LIQUID -> null;
    };
  }

  /** Percent of the fat. */
  double percent(double celsius) {
    if (celsius <= coldest) {
      return most;
    }
    return celsius >= hottest ? 0 : curve.value(celsius);
  }

  /** kJ a kilogram of fat, solid to liquid. */
  Spread heat() {
    return new Spread(
        heat.number("low_kj_per_kg"),
        heat.number("typical_kj_per_kg"),
        heat.number("high_kj_per_kg"));
  }

  void cite(Notes notes, String pointer) {
    notes.cite(heat, pointer);
    for (Row row : CURVES.rows()) {
      if (row.text("fat").equals(heat.text("fat"))) {
        notes.cite(row, pointer);
      }
    }
  }
}
