package tamis.plugin.dough;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;
import tamis.engine.table.Row;

class DoughTablesTest {
  @Test
  void frictions_are_the_same_difference_in_both_scales() {
    for (Row row : DoughConstants.MIXERS.rows()) {
      assertThat(Math.rint(row.number("friction_f") / 1.8 * 10) / 10)
          .as(row.key())
          .isEqualTo(row.number("friction_k"));
    }
  }

  @Test
  void the_textbooks_divisor_is_the_latent_heat_over_the_heat_capacity() {
    double exact =
        DoughConstants.value("latent-heat-of-ice") / DoughConstants.value("heat-capacity-of-water");

    assertThat(Math.rint(exact)).isEqualTo(DoughConstants.value("textbook-ice-divisor"));
  }
}
