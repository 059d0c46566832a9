package example.icecreammix;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;

/** Works out one mix. */
final class MixAnswer {
  private static final double USUAL_SERVING = -12;

  private final IceCreamMix.Style style;
  private final double serving;
  private final String whole;
  private final Notes notes = new Notes();
  private final Mix mix;
  private final double grams;
  private final double water;
  private final double tolerated;

  MixAnswer(IceCreamMix.Input input, Kitchen kitchen) {
    style = input.style() == null ? IceCreamMix.Style.ICE_CREAM : input.style();
    serving = input.serving() == null ? USUAL_SERVING : input.serving().celsius();
    whole = input.formula() == null ? "/mix" : "/formula";
    mix = Mix.of(input, kitchen, notes);
    double weighed = mix.parts().stream().mapToDouble(MixPart::grams).sum();
    double evaporated = weighed * mix.lost();
    grams = weighed - evaporated;
    if (!(grams > 0)) {
      throw impossible("0 g", "more than 0 g", "there is nothing in the mix");
    }
    tolerated = MixTables.constant("tolerated-unknown").number("value") * grams;
    refuseUnknown();
    water = mix.sum(Nutrient.WATER) - evaporated;
    if (evaporated > 0) {
      notes.remark(
          "cooked-in",
          "/formula",
          String.format(
              Locale.ROOT,
              "the formula loses %.1f %% over the fire: %.0f g of water are taken off the mix, not"
                  + " off the single ingredients",
              100 * mix.lost(),
              evaporated));
    }
    if (!(water > 0)) {
      throw impossible(
          "no water", "a mix with water", "there is no water in the mix: nothing can freeze");
    }
  }

  private Refusal impossible(String given, String allowed, String message) {
    return new Refusal(new Fault(FaultCode.IMPOSSIBLE, whole, given, allowed, message));
  }

  private void refuseUnknown() {
    List<Fault> faults = new ArrayList<>();
    for (Nutrient nutrient : List.of(Nutrient.WATER, Nutrient.FAT)) {
      mix.needed(nutrient, tolerated, faults, notes);
    }
    if (!faults.isEmpty()) {
      throw new Refusal(faults);
    }
  }

  Answer<IceCreamMix.Result> answer() {
    boolean sugarsKnown = mix.unknownSugars() <= tolerated;
    if (!sugarsKnown) {
      notes.remark(
          "sugars-not-known",
          whole,
          "the sugars of "
              + mix.names(Nutrient.SUGARS)
              + " are not known: neither sugars nor the freezing point can be told");
    }
    Tally tally = Tally.of(mix.parts(), notes);
    double fat = mix.sum(Nutrient.FAT);
    double solids = grams - water - mix.sum(Nutrient.ALCOHOL);
    boolean sweetenerKnown = sugarsKnown && tally.milkKnown();
    compare(tally, fat, solids, sweetenerKnown);
    Ice ice = sugarsKnown ? Ice.of(tally, water, serving, whole, notes) : Ice.NOT_KNOWN;
    caution();
    return Answer.of(
        new IceCreamMix.Result(
            grams,
            water,
            percent(water),
            fat,
            percent(fat),
            sugarsKnown ? tally.sugar() : null,
            sugarsKnown ? percent(tally.sugar()) : null,
            sweetenerKnown ? tally.sweetener() : null,
            sweetenerKnown ? percent(tally.sweetener()) : null,
            tally.milkKnown() ? tally.milkSolids() : null,
            tally.milkKnown() ? percent(tally.milkSolids()) : null,
            solids,
            percent(solids),
            sugarsKnown ? 100 * tally.equivalent() / water : null,
            ice.celsius(),
            serving,
            ice.percent(),
            tally.shares()),
        notes);
  }

  private Double percent(double part) {
    return 100 * part / grams;
  }

  private void compare(Tally tally, double fat, double solids, boolean sweetenerKnown) {
    Map<String, Double> measured = new LinkedHashMap<>();
    measured.put("total-solids", percent(solids));
    measured.put("fat", percent(fat));
    if (sweetenerKnown) {
      measured.put("sweetener", percent(tally.sweetener()));
      if (tally.withoutLactose()) {
        notes.cite(MixTables.constant("lactose-share"), "/sweetenerPercent");
      }
    }
    boolean milk = tally.milkSolids() > 0 || style == IceCreamMix.Style.SORBET;
    if (tally.milkKnown() && milk) {
      measured.put("milk-solids-not-fat", percent(tally.milkSolids()));
    }
    MixWindows.compare(style, measured, whole, notes);
  }

  private void caution() {
    if (holds(Allergen.EGG)) {
      notes.caution(
          "raw-egg",
          whole,
          "there is egg in it, and freezing does not make raw egg safe: cook the mix through (82 to"
              + " 85 °C) or take pasteurised egg, cool it fast, and follow local codes");
    }
    if (holds(Allergen.MILK)) {
      notes.caution(
          "pasteurise-and-cool",
          whole,
          "a milk mix is pasteurised, cooled fast and aged cold; what has melted is not frozen"
              + " again");
    }
  }

  private boolean holds(Allergen allergen) {
    return mix.parts().stream().anyMatch(part -> part.holds(allergen));
  }
}
