package example.icecreammix;

import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

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
    return new MixAnswer(input, kitchen).answer();
  }
}
