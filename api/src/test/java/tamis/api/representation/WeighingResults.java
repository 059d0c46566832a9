package tamis.api.representation;

import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.quantity.Money;

/** Results to write. */
final class WeighingResults {
  private WeighingResults() {}

  /** Two lines of egg white and one of sugar, with a price and a portion. */
  static Weighing.Result usual() {
    return of(
        2.5,
        new Weighing.Portion(113.4, null),
        List.of(
            line("egg-white", 150, 148.5, "4.40 EUR", Weighing.How.ON_THE_SCALE),
            line("sugar-granulated", 300, null, null, null),
            line("egg-white", 75.25, null, null, Weighing.How.BY_THE_CUP)));
  }

  static Weighing.Result of(
      double factor, Weighing.@Nullable Portion portion, List<Weighing.Line> lines) {
    Map<Nutrient, Double> per100g = new EnumMap<>(Nutrient.class);
    per100g.put(Nutrient.FAT, 12.4);
    per100g.put(Nutrient.PROTEIN, 0.0);
    return new Weighing.Result(
        factor, Money.parse("11.5 EUR"), null, portion, per100g, lines, List.of("/per100g/fat"));
  }

  static Weighing.Line line(
      String ingredient,
      double grams,
      @Nullable Double low,
      @Nullable String price,
      Weighing.@Nullable How how) {
    return new Weighing.Line(
        ingredient,
        grams,
        low,
        price == null ? null : Money.parse(price),
        how,
        List.of(),
        List.of());
  }

  /** A line whose words come from a person. */
  static Weighing.Line named(String ingredient, String... labels) {
    return new Weighing.Line(ingredient, 1, null, null, null, List.of(labels), List.of());
  }
}
