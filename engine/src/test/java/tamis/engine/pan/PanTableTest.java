package tamis.engine.pan;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

class PanTableTest {
  private static final double CUP = 236.588;

  static List<Row> pans() {
    return Pans.standard().table().rows();
  }

  static List<Row> inMillilitresPerCup() {
    return pans().stream().filter(row -> row.source().equals("pan-capacities")).toList();
  }

  @Test
  void the_pans_of_a_usual_kitchen_are_there() {
    assertThat(pans().stream().filter(row -> row.numberOrNull("capacity_ml") != null))
        .as("with a published capacity")
        .hasSizeGreaterThanOrEqualTo(60);
    Set<String> kinds = pans().stream().map(row -> row.text("kind")).collect(Collectors.toSet());
    assertThat(kinds)
        .contains(
            "round",
            "springform",
            "square",
            "rectangle",
            "loaf",
            "fluted-ring",
            "tube",
            "muffin-cup",
            "pie",
            "gastronorm",
            "ring",
            "tray");
  }

  @ParameterizedTest
  @MethodSource("pans")
  void an_id_says_kind_dimensions_and_unit_of_its_row(Row row) {
    String kind = row.text("kind");
    assertThat(row.key()).matches(kind + "-[0-9_x]+-(in|cm|mm)");
    String[] parts = row.key().substring(kind.length() + 1).split("-");
    double unit = parts[1].equals("in") ? 2.54 : parts[1].equals("mm") ? 0.1 : 1;
    List<Double> told =
        Arrays.stream(parts[0].split("x"))
            .map(text -> Double.valueOf(text.replace('_', '.')) * unit)
            .toList();
    assertThat(row.number("height_cm")).isEqualTo(told.get(told.size() - 1), within(0.001));
    if (kind.equals("gastronorm")) {
      assertThat(row.numberOrNull("length_cm")).as("only the outer rim is fixed").isNull();
    } else if (told.size() == 3) {
      assertThat(row.number("length_cm")).isEqualTo(told.get(0), within(0.001));
      assertThat(row.number("width_cm")).isEqualTo(told.get(1), within(0.001));
    } else {
      assertThat(row.number("diameter_cm")).isEqualTo(told.get(0), within(0.001));
    }
  }

  @ParameterizedTest
  @MethodSource("pans")
  void every_pan_holds_something_and_names_a_source_of_the_list(Row row) {
    Table sources =
        TableReader.plain(Pans.class, "/tamis/engine/sources.csv", "Sources", List.of("key"));
    assertThat(Pans.standard().millilitres(PanRef.parse(row.key())).low()).isPositive();
    assertThat(sources.row(row.source())).as(row.source()).isNotNull();
  }

  @ParameterizedTest
  @MethodSource("inMillilitresPerCup")
  void published_capacities_are_whole_or_half_cups(Row row) {
    double halves = row.number("capacity_ml") / CUP * 2;
    assertThat(halves).isEqualTo(Math.rint(halves), within(1e-4));
  }

  @Test
  void the_shapes_of_square_tins_are_square() {
    assertThat(pans().stream().filter(row -> "square".equals(row.textOrNull("shape"))).toList())
        .isNotEmpty()
        .allSatisfy(row -> assertThat(row.text("length_cm")).isEqualTo(row.text("width_cm")));
  }
}
