package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import tamis.engine.quantity.Units;

class ResultCsvTest {
  private static final String HEADING =
      "ingredient,grams,low,price.amount,price.currency,how,labels,earlier\r\n";

  private static String csv(Record result, String rawQuery) {
    Options options = QueryInput.options(rawQuery, new Weighing(), 1000).options();
    return new String(ResultCsv.of(result, options), UTF_8);
  }

  @Test
  void the_part_marked_as_table_is_given_with_money_in_two_columns() {
    assertThat(csv(WeighingResults.usual(), null))
        .isEqualTo(
            HEADING
                + "egg-white,150,148.5,4.40,EUR,on-the-scale,,\r\n"
                + "sugar-granulated,300,,,,,,\r\n"
                + "egg-white,75.25,,,,by-the-cup,,\r\n");
  }

  @Test
  void columns_are_the_same_without_any_row() {
    assertThat(csv(WeighingResults.of(1, null, List.of()), null)).isEqualTo(HEADING);
    assertThat(csv(WeighingResults.usual(), "pick=/lines/1/earlier")).isEqualTo(HEADING);
  }

  @Test
  void lists_inside_a_row_are_joined() {
    Weighing.Line inner = WeighingResults.line("salt", 2.5, 2.0, "1 EUR", null);
    Weighing.Line outer =
        new Weighing.Line(
            "dough", 1, null, null, null, List.of("a, b", "c"), List.of(inner, inner));

    assertThat(csv(WeighingResults.of(1, null, List.of(outer)), null))
        .endsWith("dough,1,,,,,\"a, b; c\",salt 2.5 2 1.00 EUR; salt 2.5 2 1.00 EUR\r\n");
  }

  @Test
  void quotes_separators_and_line_ends_are_quoted() {
    assertThat(csv(lines(WeighingResults.named("a \"b\"\r\nc", "d;e")), null))
        .endsWith("\r\n\"a \"\"b\"\"\r\nc\",1,,,,,d;e,\r\n");
  }

  @Test
  void text_that_a_spreadsheet_would_take_for_a_formula_is_guarded_and_numbers_are_not() {
    for (String text : List.of("=1+1", "+1", "-1", "@a", "\t=1", "\r=1")) {
      assertThat(csv(lines(WeighingResults.named("salt", text)), null)).contains("'" + text);
    }
    Weighing.Line cold = WeighingResults.line("ice", -12.5, -13.0, "-1.50 EUR", null);
    assertThat(csv(lines(cold), null)).contains("\r\nice,-12.5,-13,-1.50,EUR,");
  }

  @Test
  void a_decimal_comma_brings_a_semicolon_between_cells() {
    assertThat(csv(WeighingResults.usual(), "decimal=comma"))
        .startsWith("ingredient;grams;low;price.amount;")
        .contains("\r\negg-white;150;148,5;4,40;EUR;");
    assertThat(csv(lines(WeighingResults.named("a,b", "c;d")), "decimal=comma"))
        .endsWith("\r\na,b;1;;;;;\"c;d\";\r\n");
  }

  @Test
  void a_byte_order_mark_is_given_only_when_asked_for() {
    assertThat(csv(WeighingResults.usual(), "bom=yes")).startsWith("\uFEFFingredient");
    assertThat(csv(WeighingResults.usual(), "bom=no")).startsWith("ingredient");
  }

  @Test
  void without_a_table_single_values_stand_in_one_row() {
    assertThat(csv(WeighingResults.usual(), "pick=/portion")).isEqualTo("grams,fat\r\n113.4,\r\n");
    String whole = csv(WeighingResults.usual(), "pick=");
    assertThat(whole)
        .startsWith("factor,price.amount,price.currency,limitedBy,portion.grams,portion.fat,")
        .contains(",per100g.water,per100g.energyKcal,")
        .contains("\r\n2.5,11.50,EUR,,113.4,,")
        .endsWith(",/per100g/fat\r\n")
        .doesNotContain("lines");
  }

  @Test
  void a_map_gives_a_row_for_each_name_and_a_single_value_one_cell() {
    assertThat(csv(WeighingResults.usual(), "pick=/bill"))
        .isEqualTo("name,grams\r\negg-white,225.25\r\nsugar-granulated,300\r\n");
    assertThat(csv(WeighingResults.usual(), "pick=/lines/0/grams")).isEqualTo("grams\r\n150\r\n");
    assertThat(csv(WeighingResults.usual(), "pick=/incomplete"))
        .isEqualTo("value\r\n/per100g/fat\r\n");
    assertThat(csv(WeighingResults.usual(), "pick=/portion/fat&partial=yes")).isEqualTo("fat\r\n");
  }

  @Test
  void a_picked_figure_that_is_not_known_or_in_part_is_told() {
    for (String figure : List.of("/portion/fat", "/per100g/fat")) {
      assertThat(Refused.at(() -> csv(WeighingResults.usual(), "pick=" + figure)))
          .containsExactly("incomplete /pick");
    }
  }

  @Test
  void a_reference_table_is_given_whole_with_its_sources() {
    String csv = new String(ResultCsv.table(Units.standard().table(), Options.none()), UTF_8);

    assertThat(csv.lines().count()).isEqualTo(Units.standard().table().rows().size() + 1);
    assertThat(csv.lines().findFirst().orElseThrow()).endsWith("source,locator,basis,as_of");
  }

  @Test
  void rows_of_text_are_written_under_their_heading() {
    String csv =
        new String(
            ResultCsv.rows(
                List.of("id", "title"),
                List.of(List.of("a", "=b"), List.of("-1.5", "")),
                Options.none()),
            UTF_8);

    assertThat(csv).isEqualTo("id,title\r\na,'=b\r\n-1.5,\r\n");
  }

  @Test
  void a_broken_number_is_told_with_its_column() {
    Weighing.Line broken = WeighingResults.line("salt", Double.NaN, null, null, null);

    assertThat(Refused.at(() -> csv(lines(broken), null))).containsExactly("failed /grams");
  }

  private static Weighing.Result lines(Weighing.Line... lines) {
    return WeighingResults.of(1, null, List.of(lines));
  }
}
