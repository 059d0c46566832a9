package tamis.plugin.orders;

import java.math.BigDecimal;
import java.time.LocalDateTime;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.formula.StockItem;
import tamis.engine.pan.CakeShape;
import tamis.engine.price.Price;
import tamis.engine.price.PriceList;
import tamis.engine.price.Rates;
import tamis.engine.quantity.Length;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.record.Limit;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * From a morning's orders to one production sheet: every formula is made once for all that need it,
 * in batches that the machines take, with least over; what the batches use, what of eggs and fruit
 * is left when the whole morning is done, what must be bought, what it costs, and when it starts.
 */
public final class Production implements Calculation<Production.Input, Production.Result> {

  /** What is ordered, for when, and with what it is made. */
  public record Input(
      @Described(value = "What is ordered", fewest = 1, limit = Limit.ORDER_LINES)
          List<OrderLine> orders,
      @Described(
              value = "Local time at which all is to be ready; without it there is no timeline",
              example = "2026-05-02T07:30")
          @Nullable LocalDateTime due,
      @Described(
              value = "Local time now; nothing can start before it",
              example = "2026-05-01T05:00")
          @Nullable LocalDateTime asOf,
      @Described(value = "Most that machines and pans take", optional = true, most = 200)
          List<Capacity> capacities,
      @Described("Whether every batch breaks whole eggs, and a little may be over for it")
          @Nullable Boolean wholeEggs,
      @Described(value = "Ingredients and finished parts on hand", optional = true, most = 5_000)
          List<StockItem> stock,
      @Described(value = "Prices that go before the shop's own", optional = true, most = 20_000)
          List<Price> prices,
      @Described(
              value = "Currency to count in; that of the prices if left out",
              example = "EUR",
              most = 3)
          @Nullable String currency,
      @Described(
              value = "What one of another currency is worth in the currency that is counted in",
              optional = true)
          Map<String, BigDecimal> rates,
      @Described(value = "Whose list of allergens is meant; EU if left out", example = "EU")
          @Nullable Regime regime,
      @Described(value = "How many cooks; one unless told", atLeast = "1", atMost = "1000")
          @Nullable Integer cooks,
      @Described(value = "When hands are there; always, unless told", optional = true, most = 200)
          List<DayShift> shifts,
      @Described(value = "Time zone of all times", example = "Europe/Zurich", most = 60)
          @Nullable String zone,
      @Described(
              value = "Cakes that cream left over might cover; usual ones if left out",
              optional = true,
              most = 50)
          List<CakeShape> cakes,
      @Described(
              value = "How thick cream is spread; 5 mm unless told",
              moreThan = "0 m",
              atMost = "1 m",
              example = "5 mm")
          @Nullable Length coat) {

    public Input {
      Faults faults = new Faults();
      faults.gather(
          "",
          () -> {
            Due.check(due, asOf);
            return true;
          });
      Rates.check(currency, rates, faults);
      faults.gather("", () -> new PriceList(prices));
      OrderNames.check(orders.stream().map(OrderLine::id).toList(), faults);
      faults.refuseIfAny();
    }

    Regime regimeOrEu() {
      return regime == null ? Regime.EUROPEAN_UNION : regime;
    }
  }

  /** The sheet. */
  public record Result(
      @Described(
              value = "Batches in the order of making: parts before what takes them up",
              table = true)
          List<Sheet.BatchRow> batches,
      @Described("What is needed, made and over of every formula") List<Sheet.Made> made,
      @Described("Ingredients of all batches") List<Sheet.Used> ingredients,
      @Described("What is left of eggs and fruit when all is made") List<Sheet.Left> byProducts,
      @Described("What must be bought, in packs") List<Sheet.Bought> purchases,
      @Described("What was on hand and is left") List<Sheet.StockLeft> stockLeft,
      @Described("What is over, and what it would cover") List<Sheet.Over> leftOvers,
      @Described("The orders, equal ones together, with cost and allergens")
          List<Sheet.Ordered> orders,
      @Described(
              value = "Cost of all: the orders, and what is over, less what stock gave",
              headline = true)
          @Nullable Money cost,
      @Described("Cost of what is made over the orders") @Nullable Money spareCost,
      @Described("Cost of what finished parts on hand spared") @Nullable Money stockCost,
      @Described("When each stage starts, if a time is given") @Nullable Timetable timeline,
      @Described("What there is no price of") List<String> missing,
      @Described("Figures that are known in part only (JSON Pointers)") List<String> incomplete) {}

  @Override
  public String name() {
    return "production";
  }

  @Override
  public String title() {
    return "From a morning's orders to one production sheet";
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
    return ProductionExamples.all();
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Morning(input, kitchen).answer();
  }
}
