package tamis.plugin.nutrition;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.table.Row;

/**
 * Rounds a figure by the band it lies in. Bands are told apart by the figure before rounding: 50.4
 * kcal are above 50 and so rounded to tens.
 *
 * @param amount the printed number
 * @param lessThan whether it is less than that
 * @param row the rule
 */
record Rounding(BigDecimal amount, boolean lessThan, Row row) {

  static Rounding of(String group, double value) {
    for (int band = 1; ; band++) {
      @Nullable Row row = FigureTables.ROUNDING.row(group + "/" + band);
      if (row == null) {
        throw new IllegalStateException("no band of " + group + " holds " + value);
      }
      if (holds(row, value)) {
        return rounded(row, value);
      }
    }
  }

  private static boolean holds(Row row, double value) {
    @Nullable Double limit = row.numberOrNull("limit");
    return limit == null || value < limit || (value == limit && row.yes("limit_included"));
  }

  private static Rounding rounded(Row row, double value) {
    String how = row.text("how");
    if (value == 0 || how.equals("zero")) {
      return new Rounding(BigDecimal.ZERO, false, row);
    }
    return switch (how) {
      case "less-than" -> new Rounding(BigDecimal.valueOf(row.number("value")), true, row);
      case "step" -> new Rounding(Rounded.toStep(value, row.number("value")), false, row);
      case "figures" ->
          new Rounding(Rounded.toFigures(value, (int) row.number("value")), false, row);
      default -> throw new IllegalStateException("no way of rounding: " + how);
    };
  }
}
