package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;

import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.record.Limits;

/** Formulas that are too deep or too long are refused before they cost anything. */
class FormulaLimitsTest {
  /** Guards against work without end; nobody's idea of fast. */
  private static final Duration HANGS = Duration.ofSeconds(20);

  /** {@code f0} contains {@code f1} as often as told, and so on down; the last holds salt. */
  private static Bench chain(int levels, int times, String last) {
    Bench bench = new Bench();
    for (int i = 0; i < levels; i++) {
      String[] lines = new String[times];
      Arrays.fill(lines, "10 g >f" + (i + 1));
      bench.keep(Card.of("f" + i, lines));
    }
    return bench.keep(Card.of("f" + levels, last));
  }

  private static List<Fault> quickly(Bench bench, Object formula, Object... to) {
    return assertTimeoutPreemptively(HANGS, () -> bench.faults(formula, to));
  }

  @Test
  void sixty_four_levels_of_parts_are_made_and_one_more_is_not() {
    Batch deep = chain(64, 1, "10 g salt").batch("f0", "mass", "1 kg");
    assertThat(Bench.grams(deep, "salt")).isEqualTo(1000);
    Fault fault = chain(65, 1, "10 g salt").fault("f0");
    assertThat(fault.code()).isEqualTo(FaultCode.TOO_DEEP);
    assertThat(fault.pointer()).isEqualTo("/formula");
    assertThat(fault.message()).contains("64 levels");
  }

  @Test
  void two_hundred_levels_are_refused_at_once() {
    List<Fault> faults = quickly(chain(200, 3, "10 g salt"), "f0");
    assertThat(faults.get(0).code()).isEqualTo(FaultCode.TOO_DEEP);
  }

  @Test
  void a_diamond_of_parts_is_counted_before_it_is_walked() {
    for (Object[] to :
        List.of(
            new Object[] {"factor", 2.0},
            new Object[] {"line", Card.map("ingredient", "salt", "quantity", "1 kg")},
            new Object[] {"stock", List.of(Card.map("ingredient", "salt", "quantity", "1 kg"))})) {
      List<Fault> faults = quickly(chain(60, 2, "10 g salt"), "f0", to);
      assertThat(faults).isNotEmpty();
      assertThat(faults.get(0).code()).isEqualTo(FaultCode.TOO_MANY);
      assertThat(faults.get(0).message()).contains("20000");
    }
  }

  @Test
  void a_diamond_of_parts_with_a_fault_at_its_end_is_refused_at_once() {
    List<Fault> faults = quickly(chain(60, 2, "10 g unobtainium"), "f0");
    assertThat(faults).hasSizeLessThan(200);
    assertThat(faults.get(0).code()).isEqualTo(FaultCode.UNKNOWN_INGREDIENT);
    assertThat(faults.get(0).message()).contains("unobtainium");
  }

  @Test
  void formulas_that_all_contain_each_other_are_refused_at_once() {
    Bench bench = new Bench();
    int all = 100;
    for (int i = 0; i < all; i++) {
      String[] lines = new String[all];
      for (int j = 0; j < all; j++) {
        lines[j] = "1 g >f" + j;
      }
      bench.keep(Card.of("f" + i, lines));
    }
    List<Fault> faults = quickly(bench, "f0");
    assertThat(faults.get(0).code()).isEqualTo(FaultCode.CYCLE);
    assertThat(faults).hasSizeLessThan(1_000);
  }

  @Test
  void twenty_thousand_lines_over_all_parts_are_made_and_more_are_not() {
    String[] hundred = new String[100];
    Arrays.fill(hundred, "1 g salt");
    String[] twoHundred = new String[200];
    Arrays.fill(twoHundred, "50 g >salts");
    Bench bench =
        Bench.with(
            Card.of("salts", hundred),
            Card.of("most", twoHundred),
            Card.of("more", "1 g >most", "1 g water"));
    assertThat(bench.batch("most").lines()).hasSize(20_000);
    assertThat(Bench.grams(bench.batch("most"), "salt")).isEqualTo(10_000);
    Fault fault = bench.fault("more");
    assertThat(fault.code()).isEqualTo(FaultCode.TOO_MANY);
    assertThat(fault.message()).contains("20001", "20000");
  }

  @Test
  void ten_thousand_lines_in_one_document_are_refused_unread() {
    String[] lines = new String[10_000];
    Arrays.fill(lines, "1 g unobtainium");
    List<Fault> faults = quickly(new Bench(), Card.of("long", lines));
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).code()).isEqualTo(FaultCode.TOO_MANY);
    assertThat(faults.get(0).pointer()).isEqualTo("/formula/lines");
    assertThat(faults.get(0).message()).contains("10000", "2000");
  }

  @Test
  void the_limits_are_settings() {
    Limits usual = Limits.usual();
    Limits strict = new Limits(usual.counts(), 1, 3, usual.digits());
    assertThat(chain(1, 3, "10 g salt").limits(strict).batch("f0").lines()).hasSize(3);
    assertThat(chain(1, 4, "10 g salt").limits(strict).fault("f0").code())
        .isEqualTo(FaultCode.TOO_MANY);
    assertThat(chain(2, 1, "10 g salt").limits(strict).fault("f0").code())
        .isEqualTo(FaultCode.TOO_DEEP);
  }

  @Test
  void masses_that_grow_beyond_measure_through_the_parts_are_refused() {
    Bench bench = new Bench();
    for (int i = 0; i < 40; i++) {
      bench.keep(Card.of("f" + i, "1000 kg >f" + (i + 1)).yield("bakeLoss", 0.999999));
    }
    bench.keep(Card.of("f40", "1 g salt", "3 each egg"));
    Fault fault = bench.fault("f0", "factor", 1_000_000.0);
    assertThat(fault.code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
    assertThat(fault.pointer()).isEqualTo("/to");
    assertThat(bench.fault("f0").pointer()).isEqualTo("/formula");
  }
}
