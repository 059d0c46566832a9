package tamis.plugin.costing;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.Rates;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * What a batch costs: grams as weighed ÷ yield × price of the pack ÷ its size, for every ingredient
 * over all parts; packaging, hands and energy beside it. All digits are carried, the total is
 * rounded once to the smallest coin, and the lines are rounded by largest remainder so that those
 * shown add up to it. What is strained or boiled off was bought and is paid for. A price that is
 * not known is not taken as nothing: the cost is then said to be known in part.
 */
public final class Cost implements Calculation<Cost.Input, Cost.Result> {

  /** What is made, what things cost, and what is asked. */
  public record Input(
      @Described(value = "Id, id@revision, or the whole document", example = "financiers")
          FormulaRef formula,
      @Described("How much to make; as written if left out") @Nullable To to,
      @Described(value = "Prices that go before the shop's own", optional = true, most = 20_000)
          List<GivenPrice> prices,
      @Described(
              value = "Currency to count in; that of the prices if left out",
              example = "EUR",
              most = 3)
          @Nullable String currency,
      @Described(
              value = "What one of another currency is worth in the currency that is counted in",
              optional = true)
          Map<String, BigDecimal> rates,
      @Described("What hands cost; left out of the cost if not given") @Nullable Labour labour,
      @Described("What energy costs; left out of the cost if not given") @Nullable EnergyUse energy,
      @Described(
              value = "The part of the selling price that ingredients may cost",
              unit = "%",
              moreThan = "0",
              atMost = "100",
              example = "30")
          @Nullable Double targetFoodCostPercent,
      @Described(
              value = "The part of the selling price that is left over all costs",
              unit = "%",
              atLeast = "0",
              lessThan = "100",
              example = "60")
          @Nullable Double targetMarginPercent,
      @Described(value = "What it is sold for, without tax", example = "3.20 EUR")
          @Nullable Money sellingPrice,
      @Described("What the selling price is for; a portion if the yield tells them, else the batch")
          @Nullable PriceFor priceFor,
      @Described("What if one price changed") @Nullable PriceRise priceRise) {

    public Input {
      Faults faults = new Faults();
      Rates.check(currency, rates, faults);
      doubles(prices, faults);
      if (sellingPrice != null && sellingPrice.amount().signum() <= 0) {
        faults.add(
            new Fault(
                FaultCode.OUT_OF_BOUNDS,
                "/sellingPrice",
                sellingPrice.toString(),
                "more than 0",
                "a selling price must be more than 0, was " + sellingPrice));
      }
      if (Stream.of(targetFoodCostPercent, targetMarginPercent, sellingPrice)
              .filter(given -> given != null)
              .count()
          > 1) {
        faults.add(
            FaultCode.INCONSISTENT,
            "",
            "at most one of `targetFoodCostPercent`, `targetMarginPercent`, `sellingPrice` is"
                + " given: each says what the others are");
      }
      faults.refuseIfAny();
    }

    private static void doubles(List<GivenPrice> prices, Faults faults) {
      Map<String, Integer> seen = new HashMap<>();
      for (int i = 0; i < prices.size(); i++) {
        String item = new IngredientRef(prices.get(i).ingredient()).folded();
        @Nullable Integer earlier = seen.putIfAbsent(item, i);
        if (earlier != null) {
          faults.add(
              new Fault(
                  FaultCode.DUPLICATE,
                  "/prices/" + i + "/ingredient",
                  prices.get(i).ingredient(),
                  null,
                  "`" + prices.get(i).ingredient() + "` has a price in entry " + earlier + " too"));
        }
      }
    }
  }

  /** What it costs. */
  public record Result(
      @Described(value = "Cost of the batch: all lines together", headline = true)
          @Nullable Money total,
      @Described("The same before it is rounded") @Nullable BigDecimal unroundedTotal,
      @Described(value = "Portions of the batch") @Nullable Double portions,
      @Described("Cost of a portion") @Nullable Money perPortion,
      @Described(value = "Pieces of the batch") @Nullable Double pieces,
      @Described("Cost of a piece") @Nullable Money perPiece,
      @Described(value = "Finished mass of the batch", unit = "g") double finishedGrams,
      @Described("Cost of a kilogram of the finished product") @Nullable Money perKilogram,
      @Described("Ingredients alone: the food cost") @Nullable Money ingredients,
      @Described("Packaging alone") @Nullable Money packaging,
      @Described("Hands alone, if their rate is given") @Nullable Money labour,
      @Described("Energy alone, if its price is given") @Nullable Money energy,
      @Described(value = "Everything that costs", table = true) List<CostLine> lines,
      @Described("Stages in the order of work: spent so far, still to come, lost if it fails")
          List<StageRisk> atRisk,
      @Described("What a selling price is for") @Nullable PriceFor priceFor,
      @Described("Selling price without tax: as given, or by the target") @Nullable Money price,
      @Described(value = "Ingredients as a part of that price", unit = "%")
          @Nullable Double foodCostPercent,
      @Described(value = "What is left of that price over all costs", unit = "%")
          @Nullable Double marginPercent,
      @Described("What a change of one price does") @Nullable Rise rise,
      @Described("What there is no price of, or one of 0") List<String> missing,
      @Described("Figures that are known in part only (JSON Pointers)") List<String> incomplete) {}

  @Override
  public String name() {
    return "cost";
  }

  @Override
  public String title() {
    return "What a formula costs, what is at risk at each stage, and what to sell it for";
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
    return CostExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Costing(input, kitchen).answer();
  }
}
