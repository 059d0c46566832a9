package tamis.plugin.balancing;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.table.Row;

/** What the properties of a mix come to, against what was asked of them. */
final class Reached {
  private final Balancing.Input input;
  private final Mix mix;
  private final Limits limits;
  private final Notes notes;

  Reached(Balancing.Input input, Mix mix, Limits limits, Notes notes) {
    this.input = input;
    this.mix = mix;
    this.limits = limits;
    this.notes = notes;
  }

  List<MixFigure> figures(double[] shares, double all) {
    Map<String, Property> shown = new LinkedHashMap<>();
    input.bounds().forEach(bound -> shown.put(bound.property(), Property.of(bound.property())));
    if (input.of() != null) {
      shown.putIfAbsent(input.of(), Property.of(input.of()));
    }
    Property.USUAL.forEach(usual -> shown.putIfAbsent(usual.name(), usual));
    List<MixFigure> figures = new ArrayList<>();
    for (Property property : shown.values()) {
      @Nullable Spread amount = amount(property, shares);
      if (property.name().equals(Property.SWEETNESS) && amount != null) {
        for (Row row : Sweetness.TABLE.rows()) {
          notes.cite(row, "/properties/" + figures.size() + "/value");
        }
      }
      boolean bound = false;
      for (MixBound one : input.bounds()) {
        if (one.property().equals(property.name())) {
          figures.add(figure(property, one, amount, all, shares));
          bound = true;
        }
      }
      if (!bound) {
        figures.add(figure(property, null, amount, all, shares));
      }
    }
    return figures;
  }

  /** For a share of one that is 100 g, or null if it is not known of all that goes in. */
  private @Nullable Spread amount(Property property, double[] shares) {
    Spread sum = Spread.zero();
    for (int i = 0; i < shares.length; i++) {
      @Nullable Spread one = mix.items().get(i).of(property);
      if (one == null && shares[i] > 0) {
        return null;
      }
      sum = one == null ? sum : sum.plus(one.times(shares[i]));
    }
    return sum;
  }

  private MixFigure figure(
      Property property,
      @Nullable MixBound bound,
      @Nullable Spread amount,
      double all,
      double[] shares) {
    boolean whole = bound != null && bound.isWhole();
    @Nullable Spread value =
        amount == null ? null : amount.times(whole ? limits.reference() / 100 : 1 / all);
    @Nullable Double target = bound == null ? null : bound.target();
    boolean spread = value != null && !value.isExact();
    @Nullable Side at = null;
    for (Limit limit : limits.all()) {
      boolean ofThis =
          bound != null
              && limit.single() < 0
              && limit.pointer().startsWith("/bounds/" + input.bounds().indexOf(bound) + "/");
      at = ofThis && limit.isTouched(shares) ? limit.side() : at;
    }
    return new MixFigure(
        property.name(),
        whole ? property.unit() : property.per100(),
        value == null ? null : (Double) Words.plain(value.typical()),
        spread && value != null ? (Double) Words.plain(value.low()) : null,
        spread && value != null ? (Double) Words.plain(value.high()) : null,
        bound == null ? null : bound.low(),
        bound == null ? null : bound.high(),
        target,
        value == null || target == null ? null : (Double) Words.plain(value.typical() - target),
        at);
  }
}
