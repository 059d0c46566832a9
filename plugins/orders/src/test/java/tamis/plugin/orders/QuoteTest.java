package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.orders.Shop.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.quantity.Money;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.spi.Trees;

class QuoteTest extends CalculationContract<Quote.Input, Quote.Result> {
  private static final String PRICES =
      "egg 30 each 7.20 EUR; sugar-granulated 25 kg 27.50 EUR; almond-ground 5 kg 52.00 EUR;"
          + " butter-unsalted 10 kg 84.00 EUR; coffee-layer-cake 1 each 54.00 EUR;"
          + " financiers 1 each 1.40 EUR; rye 1 kg 6.40 EUR; tart 1 each 0 EUR; "
          + "lost 1 each 5.00 EUR; dollar-cake 1 each 9.00 USD";

  @Override
  protected Calculation<Quote.Input, Quote.Result> calculation() {
    return new Quote();
  }

  @Override
  protected Plugin plugin() {
    return new OrdersPlugin();
  }

  /** A quote tells nothing of what it rests on. */
  @Override
  protected boolean namesSources() {
    return false;
  }

  @Override
  protected Kitchen kitchen() {
    return shop(PRICES);
  }

  private static Kitchen shop(String prices) {
    return new Shop()
        .with(
            "coffee-layer-cake",
            "egg 6 each; sugar-granulated 300 g; >secret-cream 200 g",
            "yield",
            map("portions", 32.0, "pieces", 2.0),
            "stages",
            List.of(
                map(
                    "id",
                    "whisk-in-secret",
                    "station",
                    "mixer",
                    "duration",
                    "30 min",
                    "hands",
                    true),
                map(
                    "id",
                    "rest",
                    "station",
                    "fridge",
                    "duration",
                    "60 min",
                    "hands",
                    false,
                    "after",
                    List.of("whisk-in-secret"))))
        .with(
            "secret-cream",
            "butter-unsalted 200 g; almond-ground 10 g",
            "yield",
            map("portions", 3.0))
        .with(
            "financiers",
            "almond-ground 100 g; egg-white 3 each",
            "yield",
            map("portions", 24.0, "pieces", 24.0))
        .with(
            "rye",
            "rye-flour 1 kg; water 700 g",
            "yield",
            map("bakeLoss", "10 %", "pieces", 2.0),
            "stages",
            List.of(map("id", "knead", "station", "bench", "duration", "80 min", "hands", true)))
        .with("tart", "egg 1 each", "yield", map("portions", 8.0))
        .with("dollar-cake", "egg 1 each", "yield", map("portions", 8.0))
        .with("broken", ">secret-cream 10 cup", "yield", map("portions", 8.0))
        .withPrices(prices)
        .open();
  }

  private Answer<Quote.Result> asked(List<?> orders, Object... more) {
    Map<String, Object> input = map("orders", orders);
    input.putAll(map(more));
    return answer(read(input));
  }

  private static Map<String, Object> line(String formula, String way, Object size, int count) {
    return map("formula", formula, way, size, "count", count);
  }

  private List<Fault> faults(List<?> orders, Object... more) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> asked(orders, more));
    assertThat(refusal).isNotNull();
    return refusal.faults();
  }

  @ParameterizedTest(name = "{2} × {3} {1} of {0} is {4} ({5})")
  @CsvSource({
    "coffee-layer-cake, pieces, 1, 2, 108.00 EUR, two cakes at 54",
    "coffee-layer-cake, portions, 16, 1, 54.00 EUR, sixteen portions are one of two cakes",
    "coffee-layer-cake, portions, 10, 3, 101.25 EUR, 33.75 each",
    "financiers, pieces, 5, 1, 7.00 EUR, five at 1.40",
    "financiers, portions, 7, 3, 29.40 EUR, 9.80 each",
    "rye, pieces, 1, 1, 4.90 EUR, 765 g of the finished loaf at 6.40",
  })
  void a_price_is_that_of_the_shops_list(
      String formula, String way, double size, int count, String price, String source) {
    Quote.Result result = asked(List.of(line(formula, way, size, count))).result();
    assertThat(result.lines().get(0).price()).as(source).isEqualTo(Money.parse(price));
    assertThat(result.lines().get(0).currency()).isEqualTo("EUR");
    assertThat(result.total()).isEqualTo(Money.parse(price));
  }

  @Test
  void lines_add_up_to_the_total() {
    Quote.Result result =
        asked(
                List.of(
                    line("coffee-layer-cake", "portions", 10.0, 3),
                    line("financiers", "pieces", 5.0, 1)))
            .result();
    assertThat(result.total()).isEqualTo(Money.parse("108.25 EUR"));
  }

  @Test
  void without_a_row_the_mark_up_on_cost_is_asked() {
    Kitchen kitchen = shop(PRICES.replace("coffee-layer-cake 1 each 54.00", "mark-up 1 each 3.00"));
    Map<String, Object> asked = map("orders", List.of(line("coffee-layer-cake", "pieces", 1.0, 1)));
    Quote.Result result = (Quote.Result) kitchen.calculate("quote", asked).result();
    Found cost =
        Found.of(
            kitchen
                .calculate("cost", map("formula", "coffee-layer-cake", "to", map("factor", 0.5)))
                .result());
    assertThat(result.lines().get(0).price().amount().doubleValue())
        .isEqualTo(Math.rint(cost.numberOr("unroundedTotal", 0) * 300) / 100);
  }

  @Test
  void a_price_that_is_not_known_is_on_request() {
    Answer<Quote.Result> answer = asked(List.of(line("tart", "portions", 8.0, 1)));
    assertThat(answer.result().total()).isNull();
    assertThat(answer.result().lines().get(0).price()).isNull();
    assertThat(answer.remarks()).extracting(Remark::code).contains("price-on-request");
  }

  @Test
  void allergens_are_named_without_the_way_they_came_in() {
    Quote.Line line =
        asked(List.of(line("coffee-layer-cake", "pieces", 1.0, 1))).result().lines().get(0);
    assertThat(line.contains())
        .extracting(Allergen::allergen)
        .containsExactlyInAnyOrder("egg", "milk", "tree-nut");
  }

  @Test
  void the_earliest_time_is_after_all_stages_and_says_whether_it_is_in_time() {
    Object[] now = {"asOf", "2026-05-01T06:00", "due", "2026-05-01T07:00"};
    Quote.Result late = asked(List.of(line("coffee-layer-cake", "pieces", 1.0, 1)), now).result();
    assertThat(late.lines().get(0).earliest()).isEqualTo("2026-05-01T07:30");
    assertThat(late.earliest()).isEqualTo("2026-05-01T07:30");
    assertThat(late.inTime()).isFalse();
    Answer<Quote.Result> untold = asked(List.of(line("coffee-layer-cake", "pieces", 1.0, 1)));
    assertThat(untold.result().earliest()).isNull();
    assertThat(untold.result().inTime()).isNull();
  }

  @Test
  void two_things_wait_for_the_same_hands() {
    Object[] now = {"asOf", "2026-05-01T06:00", "due", "2026-05-01T07:45"};
    List<Object> both =
        List.of(line("coffee-layer-cake", "pieces", 2.0, 1), line("rye", "pieces", 2.0, 1));
    Quote.Result result = asked(both, now).result();
    assertThat(result.lines())
        .extracting(Quote.Line::earliest)
        .containsExactly("2026-05-01T07:30", "2026-05-01T07:20");
    assertThat(result.earliest())
        .as("30 min at the mixer, then 80 at the bench")
        .isEqualTo("2026-05-01T07:50");
    assertThat(result.inTime()).isFalse();
  }

  /** Nothing of how it is made or what it costs, wherever it might stand. */
  @Test
  void nothing_of_formula_or_cost_is_told() {
    Object[] now = {"asOf", "2026-05-01T06:00", "due", "2026-05-02T07:00"};
    Answer<Quote.Result> answer =
        asked(
            List.of(
                line("coffee-layer-cake", "pieces", 1.0, 2),
                line("financiers", "portions", 9.0, 1)),
            now);
    String all = Trees.of(answer.result()) + " " + answer.remarks() + " " + answer.sources();
    assertThat(all)
        .doesNotContainIgnoringCase("secret")
        .doesNotContainIgnoringCase("sugar")
        .doesNotContainIgnoringCase("grams")
        .doesNotContainIgnoringCase("cost")
        .doesNotContainIgnoringCase("via")
        .doesNotContainIgnoringCase("mixer");
    assertThat(answer.sources()).isEmpty();
  }

  @Test
  void faults_tell_nothing_of_formula_or_cost_either() {
    List<Object> orders =
        List.of(
            line("secret-cream", "portions", 1.0, 1),
            line("secret-crem", "portions", 1.0, 1),
            line("lost", "portions", 1.0, 1),
            line("coffee-layer-cake@1", "pieces", 1.0, 1),
            line("rye", "portions", 3.0, 1),
            line("financiers", "pans", List.of(map("pan", "round-8x2-in")), 1));
    List<Fault> faults = faults(orders);
    assertThat(faults)
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.NOT_ALLOWED, "/orders/0/formula"),
            tuple(FaultCode.NOT_ALLOWED, "/orders/1/formula"),
            tuple(FaultCode.NOT_ALLOWED, "/orders/2/formula"),
            tuple(FaultCode.NOT_ALLOWED, "/orders/3/formula"),
            tuple(FaultCode.NO_SIZE, "/orders/4"),
            tuple(FaultCode.NO_SIZE, "/orders/5"));
    assertThat(faults.get(1).message()).isEqualTo("`secret-crem` is not on offer");
    assertThat(faults.toString()).doesNotContain("butter", "yield", "density", "flour");
  }

  @Test
  void a_formula_that_cannot_be_sized_is_not_explained() {
    Kitchen kitchen = shop(PRICES + "; broken 1 each 3.00 EUR");
    Map<String, Object> asked = map("orders", List.of(line("broken", "portions", 8.0, 1)));
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> kitchen.calculate("quote", asked));
    assertThat(refusal.faults())
        .extracting(Fault::message)
        .containsExactly("`broken` is not to be had in this size: 8 portions");
  }

  @Test
  void zero_and_negative_counts_unknown_ways_and_a_document_are_refused() {
    List<Object> orders =
        List.of(
            line("financiers", "pieces", 0.0, 1),
            line("financiers", "pieces", 1.0, -2),
            map("formula", map("lines", List.of()), "pieces", 1.0),
            map("formula", "financiers"),
            map("formula", "financiers", "pieces", 1.0, "price", "1 EUR"));
    assertThat(faults(orders))
        .extracting(Fault::pointer)
        .containsExactly(
            "/orders/0/pieces",
            "/orders/1/count",
            "/orders/2/formula",
            "/orders/3",
            "/orders/4/price");
  }

  @Test
  void due_before_now_and_two_currencies_are_refused() {
    assertThat(
            faults(
                List.of(line("financiers", "pieces", 1.0, 1)),
                "asOf",
                "2026-05-01T06:00",
                "due",
                "2026-05-01T05:00"))
        .extracting(Fault::pointer)
        .containsExactly("/due");
    assertThat(
            faults(
                List.of(
                    line("financiers", "pieces", 1.0, 1), line("dollar-cake", "portions", 8.0, 1))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/orders"));
  }

  @Test
  void lines_keep_their_names_and_no_name_stands_twice() {
    var first = line("financiers", "pieces", 1.0, 1);
    first.put("id", "table-7");
    var second = line("financiers", "pieces", 1.0, 1);
    assertThat(asked(List.of(first, second)).result().lines())
        .extracting(Quote.Line::id)
        .containsExactly("table-7", null);
    second.put("id", "table-7");
    assertThat(
            faults(List.of(first, second), "asOf", "2026-05-01T06:00", "due", "2026-05-01T05:00"))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.INCONSISTENT, "/due"), tuple(FaultCode.DUPLICATE, "/orders/1/id"));
  }

  @Test
  void ten_thousand_equal_lines_are_quoted_once() {
    List<Object> orders = new ArrayList<>();
    for (int i = 0; i < 10_000; i++) {
      orders.add(line("financiers", "pieces", 1.0 + i % 3, 1));
    }
    Quote.Result result = asked(orders, "asOf", "2026-05-01T06:00").result();
    assertThat(result.lines()).hasSize(10_000);
    assertThat(result.total()).isEqualTo(Money.parse("27998.60 EUR"));
  }
}
