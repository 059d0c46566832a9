package tamis.plugin.orders;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.orders.Shop.map;
import static tamis.plugin.orders.Shop.order;
import static tamis.plugin.orders.Shop.prices;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Why there is no sheet: all reasons at once, each where it stands. */
class ProductionRefusalsTest {
  private static List<Fault> faults(List<?> orders, Object... more) {
    Map<String, Object> input = map("orders", orders);
    input.putAll(map(more));
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> Shop.ofCakes().calculate("production", input));
    assertThat(refusal).isNotNull();
    return refusal.faults();
  }

  @Test
  void all_that_is_wrong_is_told_at_once() {
    List<Object> orders =
        List.of(
            order("snow", "portions", 12.0, 0),
            order("snow", "portions", -1.0, 1),
            order("snoe", "portions", 1.0, 1),
            map("formula", "snow", "portions", 1.0, "pieces", 2.0),
            map("formula", "snow", "portions", 1.0, "pieceMass", "3 g"),
            order("snow", "pans", List.of(map("pan", "round-99x9-in")), 1));
    assertThat(
            faults(
                orders,
                "due",
                "2026-05-01T04:00",
                "asOf",
                "2026-05-01T05:00",
                "rates",
                map("XXQ", 1.0),
                "prices",
                prices("egg 1 each -1 EUR")))
        .extracting(Fault::pointer)
        .contains(
            "/orders/0/count",
            "/orders/1/portions",
            "/orders/2/formula",
            "/orders/3",
            "/orders/4/pieceMass",
            "/orders/5/pans/0/pan");
  }

  @Test
  void due_before_now_wrong_rates_and_an_order_told_twice_are_refused() {
    List<Object> orders =
        List.of(
            map("formula", "snow", "portions", 1.0, "id", "a"),
            map("formula", "snow", "portions", 2.0, "id", "a"));
    assertThat(
            faults(
                orders,
                "due",
                "2026-05-01T04:00",
                "asOf",
                "2026-05-01T05:00",
                "rates",
                map("XXQ", 1.0)))
        .extracting(Fault::code, Fault::pointer)
        .containsExactlyInAnyOrder(
            tuple(FaultCode.INCONSISTENT, "/due"),
            tuple(FaultCode.NOT_ALLOWED, "/rates/XXQ"),
            tuple(FaultCode.DUPLICATE, "/orders/1/id"));
  }

  @Test
  void sizes_that_a_formula_does_not_have_are_refused_where_they_stand() {
    assertThat(
            faults(
                List.of(
                    order("custard", "pieces", 3.0, 1),
                    order("snow", "pans", List.of(map("pan", "round-8x2-in")), 1)),
                "stock",
                List.of(
                    map("formula", "trifle", "quantity", "2 each"),
                    map("ingredient", "egg", "quantity", "1 each"),
                    map("ingredient", "egg", "quantity", "2 each"))))
        .extracting(Fault::pointer)
        .contains("/orders/0/pieces", "/stock/0/quantity", "/stock/2")
        .anyMatch(pointer -> pointer.startsWith("/orders/1"));
  }

  @Test
  void two_currencies_without_a_rate_are_refused() {
    assertThat(
            faults(
                List.of(order("snow", "portions", 1.0, 1)),
                "prices",
                prices("sugar-granulated 1 kg 1.00 USD")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.INCONSISTENT, "/rates"));
  }

  @Test
  void capacities_that_cannot_be_meant_are_refused() {
    List<Object> capacities =
        List.of(
            map("station", "mixer"),
            map("station", "mixer", "most", "1 kg", "least", "2 kg"),
            map("pan", "round-8x2-in"),
            map("station", "mixer", "most", "1 kg", "count", 3),
            map("pan", "round-8x2-in", "count", 2, "pieces", 3.0));
    assertThat(faults(List.of(order("snow", "portions", 1.0, 1)), "capacities", capacities))
        .extracting(Fault::pointer)
        .containsExactly(
            "/capacities/0/most",
            "/capacities/1/least",
            "/capacities/2/count",
            "/capacities/3/count",
            "/capacities/4/pan");
  }

  @Test
  void shifts_and_zones_that_cannot_be_meant_are_refused() {
    assertThat(
            faults(
                List.of(order("sponge", "portions", 8.0, 1)),
                "due",
                "2026-05-02T07:30",
                "zone",
                "Mars/Base",
                "shifts",
                List.of(map("from", "x", "to", "12:00"))))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/zone", "/shifts/0/from");
  }

  @Test
  void shifts_and_zones_are_read_without_a_time_and_without_stages_too() {
    for (String formula : List.of("sponge", "snow")) {
      assertThat(
              faults(
                  List.of(order(formula, "portions", 8.0, 1)),
                  "zone",
                  "No/Where",
                  "shifts",
                  List.of(map("from", "x", "to", "y"), map("from", "05:00", "to", "05:00"))))
          .as(formula)
          .extracting(Fault::pointer)
          .containsExactlyInAnyOrder("/zone", "/shifts/0/from", "/shifts/0/to", "/shifts/1/to");
    }
  }

  @Test
  void shifts_that_can_be_meant_are_taken_without_a_time() {
    for (Object shift :
        List.of(
            map("from", "04:00", "to", "12:00"),
            map("from", "22:00", "to", "04:00"),
            map("from", "2026-05-01T04:00", "to", "2026-05-01T12:00"))) {
      Map<String, Object> input =
          map(
              "orders",
              List.of(order("sponge", "portions", 8.0, 1)),
              "zone",
              "Europe/Zurich",
              "shifts",
              List.of(shift));
      assertThat(Shop.ofCakes().calculate("production", input).result()).isNotNull();
    }
  }

  @Test
  void more_batches_than_anybody_makes_are_refused() {
    assertThat(
            faults(
                List.of(order("sponge", "portions", 1_000_000.0, 100_000)),
                "capacities",
                List.of(map("station", "mixer", "most", "1 kg"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.TOO_MANY, "/capacities"));
  }

  @Test
  void a_mixer_too_small_for_one_egg_is_refused() {
    assertThat(
            faults(
                List.of(order("sponge", "portions", 8.0, 1)),
                "wholeEggs",
                true,
                "capacities",
                List.of(map("station", "mixer", "most", "50 g"))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.IMPOSSIBLE, "/capacities"));
  }
}
