package tamis.plugin.scaling;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.assertj.core.api.Assertions.within;
import static tamis.plugin.scaling.Scaled.formula;
import static tamis.plugin.scaling.Scaled.scaled;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.spi.Answer;

/** What changes when a cake is baked high up. */
class AltitudeTest {
  @ParameterizedTest(name = "{1} of {0} at {2} are {3} g ({5})")
  @CsvFileSource(resources = "/altitude.csv", delimiter = '|', numLinesToSkip = 1)
  void cakes_at_altitude(
      String ingredient,
      String quantity,
      String altitude,
      double grams,
      double tolerance,
      String source) {
    Map<String, Object> cake = formula("cake", ingredient + " " + quantity);
    ScaledLine line = scaled(cake, "altitude", altitude).result().lines().get(0);
    assertThat(line.grams()).as(source).isEqualTo(grams, within(tolerance));
  }

  @Test
  void what_changes_at_altitude_changes_all_that_is_told_of_the_batch() {
    Map<String, Object> cake = formula("cake", "egg-yolk 6 each; butter-unsalted 100 g; salt 2 g");
    Answer<Scaling.Result> answer = scaled(cake, "altitude", "5000 ft");
    Scaling.Result result = answer.result();
    double yolks = 6 * 17 * 1.09;
    assertThat(result.lines().get(0).altitudePercent()).isEqualTo(9, within(1e-9));
    assertThat(result.lines().get(1).altitudePercent()).isZero();
    assertThat(result.lines().get(2).altitudePercent()).isNull();
    assertThat(result.bill().get("egg-yolk").grams()).isEqualTo(yolks, within(1e-9));
    assertThat(result.grams()).isEqualTo(yolks + 102, within(1e-9));
    assertThat(result.parts().grams()).isEqualTo(result.grams());
    assertThat(result.byProducts().get(0).grams()).isEqualTo(6 * 33 * 1.09, within(1e-9));
    assertThat(result.wholeEggs().get(0).count()).isEqualTo(6.54, within(1e-9));
    assertThat(answer.remarks())
        .extracting(Remark::code, Remark::kind)
        .contains(tuple("altitude-table", Remark.Kind.ESTIMATE));
    assertThat(answer.sources())
        .filteredOn(source -> source.table().equals("altitude-cake"))
        .extracting(Cited::row, Cited::pointers)
        .containsExactly(
            tuple("egg/5000", List.of("/lines/0/grams")),
            tuple("fat/5000", List.of("/lines/1/grams")));
  }

  @Test
  void between_two_heights_both_rows_are_named() {
    Map<String, Object> cake = formula("cake", "egg 100 g; cake-flour 100 g");
    assertThat(scaled(cake, "altitude", "6000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/5000", "egg/7500", "flour/5000", "flour/7500");
    assertThat(scaled(cake, "altitude", "1000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/2500", "flour/2500");
    assertThat(scaled(cake, "altitude", "9000 ft").sources())
        .extracting(Cited::row)
        .containsExactly("egg/7500", "flour/7500");
  }

  @Test
  void above_the_table_its_last_row_is_used_and_a_remark_says_so() {
    Answer<Scaling.Result> high = scaled(formula("cake", "egg 100 g"), "altitude", "3000 m");
    assertThat(high.remarks())
        .anyMatch(r -> r.code().equals("beyond-table") && r.message().contains("7500 ft (2286 m)"));
    Answer<Scaling.Result> edge = scaled(formula("cake", "egg 100 g"), "altitude", "7500 ft");
    assertThat(edge.remarks()).noneMatch(r -> r.code().equals("beyond-table"));
    Answer<Scaling.Result> sea = scaled(formula("cake", "egg 100 g"), "altitude", "0 m");
    assertThat(sea.remarks()).isEmpty();
  }
}
