package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static tamis.plugin.nutrition.Feeding.asked;
import static tamis.plugin.nutrition.Feeding.read;
import static tamis.plugin.nutrition.Feeding.result;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** What cannot be fed or printed, each at its place. */
class NutritionRefusalsTest {
  @Test
  void more_loss_than_water_is_refused() {
    assertFault(() -> result(asked("slice", "EU", "loss", 0.6)), FaultCode.IMPOSSIBLE, "/loss");
  }

  @Test
  void a_loss_of_everything_is_refused() {
    assertFault(
        () -> read(asked("slice", "EU", "loss", "100 %")), FaultCode.OUT_OF_BOUNDS, "/loss");
  }

  @Test
  void a_portion_of_nothing_is_refused() {
    assertFault(
        () -> read(asked("slice", "EU", "portion", "0 g")), FaultCode.OUT_OF_BOUNDS, "/portion");
  }

  @Test
  void more_than_all_cannot_be_left() {
    assertFault(
        () ->
            read(
                asked(
                    "slice",
                    "EU",
                    "retention",
                    List.of(Map.of("nutrient", "ironMg", "part", "120 %")))),
        FaultCode.OUT_OF_BOUNDS,
        "/retention/0/part");
  }

  @Test
  void an_unknown_regime_or_category_is_refused() {
    assertFault(() -> read(asked("slice", "Atlantis")), FaultCode.NOT_ALLOWED, "/regime");
    assertFault(
        () -> result(asked("slice", "US", "category", "pebbles")),
        FaultCode.NOT_ALLOWED,
        "/category");
  }

  @Test
  void a_figure_that_the_label_does_not_show_is_refused() {
    assertFault(
        () -> result(Map.of("declare", Map.of("sodiumMg", 5), "regime", "EU")),
        FaultCode.NOT_ALLOWED,
        "/declare/sodiumMg");
    assertFault(
        () -> read(Map.of("declare", Map.of("fat", -1), "regime", "EU")),
        FaultCode.OUT_OF_BOUNDS,
        "/declare/fat");
    assertFault(() -> read(Map.of("regime", "EU")), FaultCode.EXACTLY_ONE, "");
  }

  private static void assertFault(
      org.assertj.core.api.ThrowableAssert.ThrowingCallable call, FaultCode code, String pointer) {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(call)
        .satisfies(
            refusal ->
                assertThat(refusal.faults())
                    .extracting(Fault::code, Fault::pointer)
                    .contains(org.assertj.core.groups.Tuple.tuple(code, pointer)));
  }
}
