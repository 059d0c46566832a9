package tamis.plugin.stages;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Composition;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.spi.Kitchen;

/**
 * What was put into the pan.
 *
 * @param solutes what is dissolved; sucrose if nothing else was said
 * @param solids grams of it, or null if only a percentage is known
 * @param percent of solids at the start, or null if nothing is known of the water
 */
record SyrupPan(Solutes solutes, @Nullable Double solids, @Nullable Double percent) {

  static SyrupPan of(SugarSyrup.Input input, Kitchen kitchen) {
    double sugar = input.sugar() == null ? 0 : input.sugar().grams();
    double water = input.water() == null ? 0 : input.water().grams();
    Solutes solutes =
        sugar == 0
            ? Solutes.NONE
            : Solutes.of(sugar, Solutes.SUCROSE_GRAMS_PER_MOLE, Solutes.SUCROSE_K);
    for (Blend blend : input.with()) {
      Composition mix =
          Composition.of(kitchen.ingredient(blend.ingredient()), blend.mass().grams());
      solutes = solutes.plus(Solutes.of(mix));
      water += mix.amount(Nutrient.WATER);
    }
    if (solutes.grams() == 0) {
      return new SyrupPan(Solutes.SUCROSE, null, input.sugarPercent());
    }
    if (input.sugarPercent() != null) {
      return new SyrupPan(solutes, solutes.grams(), input.sugarPercent());
    }
    boolean told = input.water() != null || !input.with().isEmpty();
    return new SyrupPan(
        solutes,
        solutes.grams(),
        told ? percent(solutes.grams(), water, input.water() != null ? "/water" : "/with") : null);
  }

  private static double percent(double solids, double water, String pointer) {
    double percent = 100 * solids / (solids + water);
    if (percent > Solutes.MOST_PERCENT) {
      throw Refusal.of(
          FaultCode.OUTSIDE_RANGE,
          pointer,
          String.format(
              java.util.Locale.ROOT,
              "%.1f %% of sugar beside %.1f g of water is too dry to boil as a syrup; syrups are known to %.0f %%",
              percent,
              water,
              Solutes.MOST_PERCENT));
    }
    return percent;
  }

  boolean isWeighed() {
    return solids != null && percent != null;
  }

  /** Grams of syrup at so many percent. */
  double syrup(double percent) {
    return solids == null ? 0 : solids * 100 / percent;
  }

  /** Percent of solids of a syrup that weighs so much. */
  double percentAt(double grams) {
    double solid = solids == null ? 0 : solids;
    double start = syrup(percent == null ? 100 : percent);
    if (grams < solid * 100 / Solutes.MOST_PERCENT || grams > start * (1 + 1e-9)) {
      throw Refusal.of(
          grams > start ? FaultCode.IMPOSSIBLE : FaultCode.OUTSIDE_RANGE,
          "/weighed",
          String.format(
              java.util.Locale.ROOT,
              "this syrup weighs %.1f g at the start and %.1f g at %.0f %% of sugar; %.1f g is not between",
              start,
              solid * 100 / Solutes.MOST_PERCENT,
              Solutes.MOST_PERCENT,
              grams));
    }
    return 100 * solid / grams;
  }
}
