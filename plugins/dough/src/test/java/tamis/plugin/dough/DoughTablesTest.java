package tamis.plugin.dough;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

class DoughTablesTest {
  @Test
  void every_row_names_a_listed_source() {
    Table sources =
        TableReader.plain(
            DoughPlugin.class, "/tamis/engine/sources.csv", "Sources", List.of("key"));
    List<Table> tables = new DoughPlugin().tables();
    assertThat(tables).hasSize(2);
    for (Table table : tables) {
      for (Row row : table.rows()) {
        assertThat(sources.row(row.source()))
            .as("%s, line %s", table.name(), row.line())
            .isNotNull();
      }
    }
  }

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
