package tamis.plugin.orders;

import java.time.LocalDateTime;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.formula.PanCount;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.record.Limit;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * What a shop's own page may show to anybody: price, portions, allergens and earliest time of what
 * is on offer; nothing of how it is made or what it costs, in figures, remarks, sources or faults.
 * What is on offer stands in the shop's price list under the formula's id, with the size it is sold
 * in; a row {@code mark-up} ({@code 1 each} of cost for so much) offers all that has no row.
 */
public final class Quote implements Calculation<Quote.Input, Quote.Result> {

  /** What is asked for, and for when. */
  public record Input(
      @Described(value = "What is asked for", fewest = 1, limit = Limit.ORDER_LINES)
          List<QuoteLine> orders,
      @Described(value = "Local time at which it is wanted", example = "2026-05-02T09:30")
          @Nullable LocalDateTime due,
      @Described(
              value = "Local time now; without it no earliest time is told",
              example = "2026-05-01T14:00")
          @Nullable LocalDateTime asOf,
      @Described(value = "Whose list of allergens is meant; EU if left out", example = "EU")
          @Nullable Regime regime) {

    public Input {
      Faults faults = new Faults();
      faults.gather(
          "",
          () -> {
            Due.check(due, asOf);
            return true;
          });
      OrderNames.check(orders.stream().map(QuoteLine::id).toList(), faults);
      faults.refuseIfAny();
    }

    Regime regimeOrEu() {
      return regime == null ? Regime.EUROPEAN_UNION : regime;
    }
  }

  /** What the customer is told. */
  public record Result(
      @Described(value = "Price of all lines; absent if one is on request", headline = true)
          @Nullable Money total,
      @Described(value = "Line by line, as asked", table = true) List<Line> lines,
      @Described("Local time at which all of it can be ready, if now is told")
          @Nullable String earliest,
      @Described("Whether that is in time, if both times are told") @Nullable Boolean inTime) {}

  /** One line. */
  public record Line(
      @Described("Id of what is on offer") String formula,
      @Described("How many") int count,
      @Described("Price of one; absent if it is on request") @Nullable Money each,
      @Described("Price of the line; absent if it is on request") @Nullable Money price,
      @Described(value = "Currency of the price", example = "EUR") @Nullable String currency,
      @Described("Portions of the line, if they are counted") @Nullable Double portions,
      @Described("Allergens it contains") List<Allergen> contains,
      @Described("Allergens it may contain") List<Allergen> mayContain,
      @Described("Local time at which all that is asked of it can be ready, if now is told")
          @Nullable String earliest,
      @Described("Name of the order line, as asked") @Nullable String id) {

    Line at(@Nullable String time) {
      return new Line(
          formula, count, each, price, currency, portions, contains, mayContain, time, id);
    }

    Line named(@Nullable String name) {
      return new Line(
          formula, count, each, price, currency, portions, contains, mayContain, earliest, name);
    }
  }

  @Override
  public String name() {
    return "quote";
  }

  @Override
  public String title() {
    return "Price, portions, allergens and earliest time of what a customer asks for";
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
    return List.of(
        new Input(
            List.of(
                new QuoteLine("coffee-layer-cake", 16.0, null, List.<PanCount>of(), 2, "table-7"),
                new QuoteLine("financiers", null, 24.0, List.<PanCount>of(), null, null)),
            LocalDateTime.parse("2026-05-02T09:30"),
            LocalDateTime.parse("2026-05-01T06:00"),
            null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Quoting(input, kitchen).answer();
  }
}
