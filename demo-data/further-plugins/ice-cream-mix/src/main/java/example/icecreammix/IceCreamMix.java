package example.icecreammix;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Allergen;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/** What an ice-cream mix is made of, where it begins to freeze, and how much of it is ice. */
public final class IceCreamMix implements Calculation<IceCreamMix.Input, IceCreamMix.Result> {
  /** Which product the mix is measured against. */
  public enum Style {
    ICE_CREAM,
    GELATO,
    SORBET;

    String key() {
      return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
  }

  /** One ingredient of the mix. */
  public record Portion(
      @Described(value = "What goes in", example = "milk-whole") IngredientRef ingredient,
      @Described(value = "How much of it", moreThan = "0 g", atMost = "10000 kg", example = "600 g")
          Mass mass) {}

  /** The mix, and how it is served. */
  @ExactlyOne({"mix", "formula+to"})
  public record Input(
      @Described(value = "Ingredients of the mix", optional = true, fewest = 1, most = 100)
          List<Portion> mix,
      @Described(value = "A formula of the mix instead", example = "pastry-cream")
          @Nullable FormulaRef formula,
      @Described(value = "How much of the formula") @Nullable To to,
      @Described(
              value = "Temperature at which it is served, −12 °C when not given",
              atLeast = "-20 °C",
              atMost = "-1 °C",
              example = "-12 °C")
          @Nullable Temperature serving,
      @Described(
              value = "Product whose windows apply: ice-cream when not given",
              example = "ice-cream")
          @Nullable Style style) {}

  /** What one ingredient brings. */
  public record Share(
      @Described("Id of the ingredient") String ingredient,
      @Described(value = "Mass", unit = "g") double grams,
      @Described(value = "Water", unit = "g") @Nullable Double waterGrams,
      @Described(value = "Fat", unit = "g") @Nullable Double fatGrams,
      @Described(value = "Sugars, lactose included", unit = "g") @Nullable Double sugarGrams,
      @Described(value = "Milk solids not fat", unit = "g")
          @Nullable Double milkSolidsNotFatGrams,
      @Described(value = "Sucrose that lowers the freezing point as much", unit = "g")
          @Nullable Double sucroseEquivalentGrams) {}

  /** What the mix is. */
  public record Result(
      @Described(value = "Mass of the mix", unit = "g") double grams,
      @Described(value = "Water", unit = "g") double waterGrams,
      @Described(value = "Water in the mix", unit = "%") double waterPercent,
      @Described(value = "Fat", unit = "g") double fatGrams,
      @Described(value = "Fat in the mix", unit = "%") double fatPercent,
      @Described(value = "Sugars, lactose included", unit = "g") @Nullable Double sugarGrams,
      @Described(value = "Sugars in the mix", unit = "%") @Nullable Double sugarPercent,
      @Described(value = "Sugars and syrup solids without lactose", unit = "g")
          @Nullable Double sweetenerGrams,
      @Described(value = "Sweeteners in the mix", unit = "%") @Nullable Double sweetenerPercent,
      @Described(value = "Milk solids not fat", unit = "g")
          @Nullable Double milkSolidsNotFatGrams,
      @Described(value = "Milk solids not fat in the mix", unit = "%")
          @Nullable Double milkSolidsNotFatPercent,
      @Described(value = "All that is neither water nor alcohol", unit = "g")
          double totalSolidsGrams,
      @Described(value = "Total solids in the mix", unit = "%") double totalSolidsPercent,
      @Described(value = "Sucrose equivalent for 100 g of water", unit = "g")
          @Nullable Double sucroseEquivalentPer100gWater,
      @Described(value = "Temperature at which ice begins to form", unit = "°C", headline = true)
          @Nullable Double freezingCelsius,
      @Described(value = "Serving temperature", unit = "°C") double servingCelsius,
      @Described(value = "Water that is ice when served", unit = "%")
          @Nullable Double frozenWaterPercent,
      @Described(value = "What each ingredient brings", table = true) List<Share> shares) {}

  @Override
  public String name() {
    return "ice-cream-mix";
  }

  @Override
  public String title() {
    return "Composition and freezing of an ice-cream mix";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return MixExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Mix mix = Mix.of(input, kitchen, notes);
    List<MixPart> parts = mix.parts();
    double weighed = parts.stream().mapToDouble(MixPart::grams).sum();
    double evaporated = weighed * mix.lost();
    double grams = weighed - evaporated;
    if (!(grams > 0)) {
      throw new Refusal(
          new Fault(
              FaultCode.IMPOSSIBLE, whole(input), "0 g", "more than 0 g", "there is nothing in the mix"));
    }
    Row tolerated = MixTables.constant("tolerated-unknown");
    List<Fault> faults = new ArrayList<>();
    for (Nutrient nutrient : List.of(Nutrient.WATER, Nutrient.FAT)) {
      mix.needed(nutrient, tolerated.number("value") * grams, faults, notes);
    }
    if (!faults.isEmpty()) {
      throw new Refusal(faults);
    }
    double water = mix.sum(Nutrient.WATER) - evaporated;
    if (evaporated > 0) {
      notes.remark(
          "cooked-in",
          "/formula",
          String.format(
              Locale.ROOT,
              "the formula loses %.1f %% over the fire: %.0f g of water are taken off the mix, not off"
                  + " the single ingredients",
              100 * mix.lost(),
              evaporated));
    }
    if (!(water > 0)) {
      throw new Refusal(
          new Fault(
              FaultCode.IMPOSSIBLE,
              whole(input),
              "no water",
              "a mix with water",
              "there is no water in the mix: nothing can freeze"));
    }
    double fat = mix.sum(Nutrient.FAT);
    double alcohol = mix.sum(Nutrient.ALCOHOL);
    double solids = grams - water - alcohol;

    boolean sugarsKnown =
        mix.unknownSugars()
            <= tolerated.number("value") * grams;
    if (!sugarsKnown) {
      notes.remark(
          "sugars-not-known",
          whole(input),
          "the sugars of "
              + mix.names(Nutrient.SUGARS)
              + " are not known: neither sugars nor the freezing point can be told");
    }

    List<Share> shares = new ArrayList<>();
    double sugar = 0;
    double sweetener = 0;
    double equivalent = 0;
    double milk = 0;
    boolean milkKnown = true;
    boolean lactoseTakenOut = false;
    for (int i = 0; i < parts.size(); i++) {
      MixPart part = parts.get(i);
      String place = "/shares/" + i;
      Double msnf = part.milkSolids(notes, place);
      if (msnf == null) {
        milkKnown = false;
        notes.remark(
            "milk-solids-not-known",
            part.pointer(),
            "how much milk is in "
                + part.ingredient().title("en")
                + " is not known: milk solids not fat are left out, and the freezing point is"
                + " without its milk salts");
      } else {
        milk += msnf;
      }
      Double se = part.equivalent(msnf, notes, place);
      if (se != null) {
        equivalent += se;
      }
      sugar += part.orNothing(Nutrient.SUGARS);
      sweetener += part.sweetener(msnf);
      if (msnf != null && msnf > 0 && !part.isPlainMilk()) {
        lactoseTakenOut = true;
      }
      shares.add(
          new Share(
              part.ingredient().id(),
              part.grams(),
              part.of(Nutrient.WATER),
              part.of(Nutrient.FAT),
              part.of(Nutrient.SUGARS),
              msnf,
              se));
    }

    Style style = input.style() == null ? Style.ICE_CREAM : input.style();
    double serving = input.serving() == null ? -12 : input.serving().celsius();
    Map<String, Double> measured = new LinkedHashMap<>();
    measured.put("total-solids", 100 * solids / grams);
    measured.put("fat", 100 * fat / grams);
    if (sugarsKnown && milkKnown) {
      measured.put("sweetener", 100 * sweetener / grams);
      if (lactoseTakenOut) {
        notes.cite(MixTables.constant("lactose-share"), "/sweetenerPercent");
      }
    }
    if (milkKnown && (milk > 0 || style == Style.SORBET)) {
      measured.put("milk-solids-not-fat", 100 * milk / grams);
    }
    MixWindows.compare(style, measured, whole(input), notes);

    Double freezing = null;
    Double frozen = null;
    if (sugarsKnown) {
      Row salts = MixTables.constant("milk-salts");
      notes.cite(salts, "/freezingCelsius");
      Freezing curve = new Freezing(equivalent, salts.number("value") * milk, water);
      freezing = curve.celsius() + 0.0;
      frozen = 100 * curve.frozen(serving);
      for (Row row : Freezing.about(100 * equivalent / water)) {
        notes.cite(row, "/freezingCelsius");
      }
      notes.estimate(
          "freezing-estimate",
          whole(input),
          "the freezing point and the ice are estimates by sucrose equivalents, from tables told"
              + " from memory; expect half a degree and five points of ice either way");
      if (frozen < 100 && frozen > 0) {
        for (Row row : Freezing.about(curve.strength(serving))) {
          notes.cite(row, "/frozenWaterPercent");
        }
        if (curve.strength(serving) > Freezing.end()) {
          notes.estimate(
              "beyond-the-curve",
              "/serving",
              "at this temperature the syrup left is stronger than the curve goes: its last slope"
                  + " was drawn on");
        }
      }
      if (frozen == 0) {
        notes.remark(
            "does-not-freeze", "/serving", "at the serving temperature nothing of it is ice yet");
      }
    }
    if (parts.stream().anyMatch(p -> p.holds(Allergen.EGG))) {
      notes.caution(
          "raw-egg",
          whole(input),
          "there is egg in it, and freezing does not make raw egg safe: cook the mix through (82 to"
              + " 85 °C) or take pasteurised egg, cool it fast, and follow local codes");
    }
    if (parts.stream().anyMatch(p -> p.holds(Allergen.MILK))) {
      notes.caution(
          "pasteurise-and-cool",
          whole(input),
          "a milk mix is pasteurised, cooled fast and aged cold; what has melted is not frozen again");
    }
    return Answer.of(
        new Result(
            grams,
            water,
            100 * water / grams,
            fat,
            100 * fat / grams,
            sugarsKnown ? sugar : null,
            sugarsKnown ? 100 * sugar / grams : null,
            sugarsKnown && milkKnown ? sweetener : null,
            sugarsKnown && milkKnown ? 100 * sweetener / grams : null,
            milkKnown ? milk : null,
            milkKnown ? 100 * milk / grams : null,
            solids,
            100 * solids / grams,
            sugarsKnown ? 100 * equivalent / water : null,
            freezing,
            serving,
            frozen,
            shares),
        notes);
  }

  private static String whole(Input input) {
    return input.formula() == null ? "/mix" : "/formula";
  }
}
