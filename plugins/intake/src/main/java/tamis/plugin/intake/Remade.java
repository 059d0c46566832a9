package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Line;
import tamis.engine.formula.To;
import tamis.engine.formula.Yield;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;
import tamis.engine.record.Component;
import tamis.engine.record.PlainValues;
import tamis.engine.record.Shape;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.word.Figures;

/**
 * The formula at another size or in other quantities. Sizes, weights and percentages are those of
 * {@code scaling} and {@code bakers-percentage}, asked for by their names.
 */
final class Remade {
  private final Formula formula;
  private final Quantities wanted;
  private final @Nullable To to;
  private final Kitchen kitchen;

  private Remade(Formula formula, Quantities wanted, @Nullable To to, Kitchen kitchen) {
    this.formula = formula;
    this.wanted = wanted;
    this.to = to;
    this.kitchen = kitchen;
  }

  static Formula of(
      Formula formula, @Nullable Quantities wanted, @Nullable To to, Kitchen kitchen) {
    Quantities quantities = wanted == null ? Quantities.AS_WRITTEN : wanted;
    boolean asIs = quantities == Quantities.AS_WRITTEN && to == null;
    return asIs ? formula : new Remade(formula, quantities, to, kitchen).made();
  }

  private Formula made() {
    Map<String, Object> asked = new LinkedHashMap<>(Map.of("formula", PlainValues.of(formula)));
    if (to != null) {
      asked.put("to", PlainValues.of(to));
    }
    Record scaled = kitchen.calculate("scaling", asked).result();
    double factor = number(scaled, "factor");
    Map<String, Double> grams = new HashMap<>();
    for (Object line : (List<?>) Objects.requireNonNull(value(scaled, "lines"))) {
      grams.put(String.valueOf(value((Record) line, "path")), number((Record) line, "grams"));
    }
    double flour = wanted == Quantities.PERCENT ? flour(asked) : 0;
    List<Line> lines = new ArrayList<>();
    for (int i = 0; i < formula.lines().size(); i++) {
      Line line = formula.lines().get(i);
      @Nullable Double weight = grams.get(Formula.linePointer(i));
      lines.add(with(line, quantity(line.quantity(), weight, flour, factor)));
    }
    return new Formula(
        formula.id(),
        formula.title(),
        formula.measures(),
        lines,
        given(factor),
        formula.stages(),
        formula.shelfLife(),
        formula.packaging(),
        formula.flour(),
        formula.notes(),
        formula.origin());
  }

  private double flour(Map<String, Object> asked) {
    double flour = number(kitchen.calculate("bakers-percentage", asked).result(), "flourGrams");
    if (flour <= 0) {
      throw Refusal.of(
          FaultCode.NO_FLOUR, "/quantities", "there is no flour that percentages could be of");
    }
    return flour;
  }

  private Quantity quantity(
      Quantity written, @Nullable Double weight, double flour, double factor) {
    if (!written.isMeasured() || weight == null) {
      return written;
    }
    return switch (wanted) {
      case GRAMS -> Quantity.parse(rounded(weight) + " g");
      case PERCENT -> Quantity.parse(rounded(100 * weight / flour) + " %");
      case AS_WRITTEN -> times(written, factor, written.unit());
      case US, METRIC -> converted(written, factor);
    };
  }

  /** Four figures are more than any scale of a bakery shows. */
  private static String rounded(double value) {
    double step = value < 10 ? 1000 : 100;
    double near = Math.rint(value * step) / step;
    return Figures.of(near == 0 ? value : near);
  }

  private static Quantity times(Quantity written, double factor, String unit) {
    String number = Figures.of(written.low() * factor, written.high() * factor);
    return Quantity.parse(number + " " + unit);
  }

  private Quantity converted(Quantity written, double factor) {
    Unit unit = Units.standard().unit(written.unit(), formula.measuresOrUs());
    String target = target(unit, unit.factor() * written.high() * factor);
    if (target.isEmpty()) {
      return times(written, factor, written.unit());
    }
    Unit into = Units.standard().unit(target, Measures.US);
    double change = factor * unit.factor() / into.factor();
    String low = rounded(written.low() * change);
    String high = rounded(written.high() * change);
    return Quantity.parse((written.isRange() ? low + " to " + high : low) + " " + target);
  }

  /** The unit that a cook of the place takes for an amount; empty for what is counted. */
  private String target(Unit unit, double amount) {
    boolean us = wanted == Quantities.US;
    if (unit.imprecise()) {
      return "";
    }
    if (unit.dimension() == Dimension.MASS) {
      return us ? (amount >= 453 ? "lb" : "oz") : "g";
    }
    if (unit.dimension() == Dimension.VOLUME) {
      return us ? (amount >= 59 ? "US cup" : amount >= 14 ? "US tbsp" : "US tsp") : "ml";
    }
    return "";
  }

  private static Line with(Line line, Quantity quantity) {
    return new Line(
        line.ingredient(),
        line.formula(),
        quantity,
        line.state(),
        line.preparation(),
        line.stage(),
        line.role(),
        line.remains(),
        line.note());
  }

  private @Nullable Yield given(double factor) {
    @Nullable Yield gives = formula.yield();
    return gives == null
        ? null
        : new Yield(
            times(gives.portions(), factor),
            times(gives.pieces(), factor),
            gives.pieceMass(),
            gives.makeUpLoss(),
            gives.bakeLoss(),
            gives.mass(),
            gives.pans(),
            gives.batterDensity(),
            gives.density());
  }

  private static @Nullable Double times(@Nullable Double number, double factor) {
    return number == null ? null : number * factor;
  }

  private static double number(Record record, String name) {
    return ((Number) Objects.requireNonNull(value(record, name))).doubleValue();
  }

  private static @Nullable Object value(Record record, String name) {
    @Nullable Component component = Shape.of(record.getClass()).component(name);
    return component == null ? null : component.of(record);
  }
}
