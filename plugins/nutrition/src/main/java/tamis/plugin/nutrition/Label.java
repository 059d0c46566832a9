package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/** Prints figures by the rules of a regime. */
final class Label {
  private final LabelRegime regime;

  Label(LabelRegime regime) {
    this.regime = regime;
  }

  /** The figures that the regime's label can show, in its order. */
  List<LabelFigure> figures() {
    List<LabelFigure> figures = new ArrayList<>();
    for (Row row : FigureTables.FIGURES.rows()) {
      @Nullable LabelFigure figure = LabelFigure.named(row.text("figure"));
      if (row.text("regime").equals(regime.figures()) && figure != null) {
        figures.add(figure);
      }
    }
    return figures;
  }

  /** The rule for a figure, or null if the regime's label does not show it. */
  @Nullable Row rule(LabelFigure figure) {
    return FigureTables.FIGURES.row(regime.figures() + "/" + figure);
  }

  boolean isMandatory(LabelFigure figure) {
    @Nullable Row rule = rule(figure);
    return rule != null && rule.yes("mandatory");
  }

  /**
   * A figure as printed.
   *
   * @param value what is known of it
   * @param most what it is at most, with all that ingredients do not tell
   */
  Declared declared(Row rule, double value, double most, Notes notes, String pointer) {
    Rounding rounded = Rounding.of(rule.text("rounding"), value);
    notes.cite(rule, pointer);
    notes.cite(rounded.row(), pointer);
    String text = text(rounded, rule);
    boolean complete = most == value || (Double.isFinite(most) && text.equals(text(rule, most)));
    double amount = rounded.amount().doubleValue();
    @Nullable Row tolerance = tolerance(rule, amount);
    return new Declared(
        complete ? text : text + " or more",
        amount,
        rule.text("unit"),
        rounded.lessThan(),
        percent(rule, amount == 0 ? 0 : value, notes, pointer),
        bound(tolerance, "minus", amount, -1),
        bound(tolerance, "plus", amount, 1),
        complete);
  }

  private String text(Row rule, double value) {
    return text(Rounding.of(rule.text("rounding"), value), rule);
  }

  private String text(Rounding rounded, Row rule) {
    String less = regime.isAmerican() ? "less than " : "<";
    return (rounded.lessThan() ? less : "")
        + Rounded.plain(rounded.amount())
        + " "
        + rule.text("unit");
  }

  /**
   * Of the figure before rounding, or of the nothing that is declared: 21 CFR 101.9(d)(7)(ii)
   * allows either, and nothing with a percentage beside it would not be understood.
   */
  private static @Nullable Double percent(Row rule, double value, Notes notes, String pointer) {
    @Nullable Double reference = rule.numberOrNull("reference");
    @Nullable String group = rule.textOrNull("percent_rounding");
    if (reference == null || group == null) {
      return null;
    }
    Rounding rounded = Rounding.of(group, Rounded.percent(value, reference));
    notes.cite(rounded.row(), pointer + "/percent");
    return rounded.amount().doubleValue();
  }

  private static @Nullable Row tolerance(Row rule, double amount) {
    @Nullable String group = rule.textOrNull("tolerance");
    if (group == null) {
      return null;
    }
    for (int band = 1; ; band++) {
      @Nullable Row row = FigureTables.TOLERANCES.row(group + "/" + band);
      if (row == null) {
        return null;
      }
      @Nullable Double below = row.numberOrNull("below");
      if (below == null || amount < below) {
        return row;
      }
    }
  }

  private static @Nullable Double bound(
      @Nullable Row tolerance, String side, double amount, int sign) {
    @Nullable Double size = tolerance == null ? null : tolerance.numberOrNull(side);
    if (tolerance == null || size == null) {
      return null;
    }
    double off = tolerance.text("unit").equals("%") ? amount * size / 100 : size;
    return Math.max(0, amount + sign * off);
  }
}
