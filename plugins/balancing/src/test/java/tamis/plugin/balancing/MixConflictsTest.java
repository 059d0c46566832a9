package tamis.plugin.balancing;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.plugin.balancing.Mixes.balanced;
import static tamis.plugin.balancing.Mixes.bound;
import static tamis.plugin.balancing.Mixes.faults;
import static tamis.plugin.balancing.Mixes.map;
import static tamis.plugin.balancing.Mixes.own;
import static tamis.plugin.balancing.Mixes.priced;
import static tamis.plugin.balancing.Mixes.withBounds;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Bounds that cannot be kept together, and mixes without an end. */
class MixConflictsTest {
  @Test
  void bounds_that_exclude_each_other_are_named_and_no_other() {
    List<Fault> faults =
        faults(
            "ingredients",
            List.of(
                priced("lean", "1 EUR", "fat", 1.0, "water", 90.0),
                priced("rich", "4 EUR", "fat", 40.0, "water", 55.0)),
            "bounds",
            List.of(bound("fat", "low", 20.0, "high", 30.0), bound("water", "low", 80.0)),
            "costAtMost",
            "3.90 EUR");
    assertThat(faults)
        .extracting(Fault::code, Fault::pointer)
        .containsExactlyInAnyOrder(
            tuple(FaultCode.IMPOSSIBLE, "/bounds/0/low"),
            tuple(FaultCode.IMPOSSIBLE, "/bounds/1/low"));
    // 80 % of water is 10/35 rich: fat 1 + 39 × 10/35 = 12.14
    assertThat(faults.get(0).message())
        .contains("`fat at least 20 %` cannot be kept together with water at least 80 %")
        .contains("12.14 % or less");
  }

  /** Whatever is refused: without any one bound that is named, the rest can be kept. */
  @Test
  void the_named_set_is_a_smallest_one() {
    Random random = new Random(20261125);
    int refused = 0;
    for (int round = 0; round < 300; round++) {
      List<Map<String, Object>> items = new ArrayList<>();
      for (int i = 0; i < 4; i++) {
        items.add(
            priced(
                "i" + i,
                "1 EUR",
                "fat",
                random.nextInt(50) + 0.0,
                "water",
                random.nextInt(50) + 0.0,
                "ash",
                random.nextInt(10) + 0.0));
      }
      List<Map<String, Object>> bounds = new ArrayList<>();
      for (String property : List.of("fat", "water", "ash")) {
        double low = random.nextInt(40);
        bounds.add(bound(property, "low", low, "high", low + random.nextInt(10)));
      }
      Refusal refusal =
          catchThrowableOfType(
              Refusal.class, () -> balanced("ingredients", items, "bounds", bounds));
      if (refusal == null) {
        continue;
      }
      refused++;
      List<String> named = refusal.faults().stream().map(Fault::pointer).toList();
      assertThat(refusal.faults()).allMatch(fault -> fault.code() == FaultCode.IMPOSSIBLE);
      assertThat(isPossible(items, only(bounds, named, null))).as("%s alone", named).isFalse();
      for (String left : named) {
        assertThat(isPossible(items, only(bounds, named, left)))
            .as("%s without %s", named, left)
            .isTrue();
      }
    }
    assertThat(refused).isGreaterThan(50);
  }

  private static List<Map<String, Object>> only(
      List<Map<String, Object>> bounds, List<String> named, String without) {
    List<Map<String, Object>> only = new ArrayList<>();
    for (int i = 0; i < bounds.size(); i++) {
      Map<String, Object> bound = map("property", bounds.get(i).get("property"));
      for (String side : List.of("low", "high")) {
        String pointer = "/bounds/" + i + "/" + side;
        if (named.contains(pointer) && !pointer.equals(without)) {
          bound.put(side, bounds.get(i).get(side));
        }
      }
      if (bound.size() > 1) {
        only.add(bound);
      }
    }
    return only;
  }

  private boolean isPossible(List<Map<String, Object>> items, List<Map<String, Object>> bounds) {
    return catchThrowableOfType(
            Refusal.class, () -> balanced("ingredients", items, "bounds", bounds))
        == null;
  }

  @Test
  void what_has_no_end_names_what_grows() {
    assertThat(
            faults(
                "ingredients",
                List.of(own("a", "fat", 5.0), own("b", "fat", 0.0)),
                "bounds",
                List.of(bound("fat", "low", 10.0, "per", "whole")),
                "aim",
                "most",
                "of",
                "fat"))
        .singleElement()
        .satisfies(
            fault -> {
              assertThat(fault.code()).isEqualTo(FaultCode.IMPOSSIBLE);
              assertThat(fault.pointer()).isEqualTo("/mass");
              assertThat(fault.message())
                  .contains("no end", "a could go in")
                  .doesNotContain("b could");
            });
  }

  @Test
  void more_lows_than_there_is_room_for_are_refused() {
    assertThat(
            faults(
                "ingredients",
                List.of(
                    withBounds(priced("a", "1 EUR", "fat", 1.0), "low", "600 g"),
                    withBounds(priced("b", "1 EUR", "fat", 1.0), "low", "500 g"))))
        .extracting(Fault::pointer)
        .containsExactlyInAnyOrder("/ingredients/0/low", "/ingredients/1/low");
  }
}
