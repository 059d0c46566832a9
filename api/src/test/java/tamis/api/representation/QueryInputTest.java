package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.record.Limits;
import tamis.engine.record.References;

class QueryInputTest {
  private static final Weighing WEIGHING = new Weighing();

  private static Query query(String raw) {
    return QueryInput.read(raw, WEIGHING, QueryInput.LONGEST);
  }

  private static Weighing.Input input(String raw) {
    return query(raw).input(Weighing.Input.class, References.UNCHECKED, Limits.usual());
  }

  private static Weighing.Input input(String raw, Object body) {
    return QueryInput.options(raw, WEIGHING, QueryInput.LONGEST)
        .input(Weighing.Input.class, body, References.UNCHECKED, Limits.usual());
  }

  private static List<String> faultsOf(String raw) {
    return Refused.at(() -> input(raw));
  }

  @Test
  void dots_nest_and_numbers_make_lists() {
    Query query =
        query("to.pans.0.pan.shape=round&to.pans.0.count=2&to.pans.1.pan=round-8x2-in&mass=3+kg");

    assertThat(query.tree())
        .isEqualTo(
            Map.of(
                "mass",
                "3 kg",
                "to",
                Map.of(
                    "pans",
                    List.of(
                        Map.of("pan", Map.of("shape", "round"), "count", "2"),
                        Map.of("pan", "round-8x2-in")))));
    assertThat(query.faults()).isEmpty();
  }

  @Test
  void entries_may_come_in_any_order() {
    assertThat(query("earlier.1.ingredient=b&earlier.0.ingredient=a").tree())
        .isEqualTo(
            Map.of("earlier", List.of(Map.of("ingredient", "a"), Map.of("ingredient", "b"))));
  }

  @Test
  void a_name_is_repeated_for_a_list_of_single_values() {
    assertThat(input("mass=1+g&named=sultana&named=raisin").named()).hasSize(2);
    assertThat(input("mass=1+g&named=sultana").named()).hasSize(1);
    assertThat(input("mass=1+g&named.0=sultana&named.1=raisin").named()).hasSize(2);
  }

  @Test
  void a_map_keeps_names_that_are_numbers() {
    assertThat(query("shares.0=0.1&shares.7=0.2").tree())
        .isEqualTo(Map.of("shares", Map.of("0", "0.1", "7", "0.2")));
  }

  @Test
  void numbers_and_flags_are_read_from_text() {
    Weighing.Input input = input("pieces=12&pieceMass=50%20g&loss=10%25&step=0.5&dusting=yes");

    assertThat(input.pieces()).isEqualTo(12);
    assertThat(input.loss().value()).isEqualTo(0.1);
    assertThat(input.step()).isEqualTo(0.5);
    assertThat(input.dusting()).isTrue();
  }

  @ParameterizedTest
  @CsvSource({
    "note=cr%c3%A8me, crème",
    "note=a+b%20c%2Bd, a b c+d",
    "note=a%3Db%26c, a=b&c",
    "note=a=b, a=b",
    "note=crème+ü, crème ü",
    "note=%F0%9F%8D%9E, 🍞",
  })
  void text_is_decoded(String raw, String note) {
    assertThat(input("mass=1+g&&" + raw + "&").note()).isEqualTo(note);
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "note=%",
        "note=%2",
        "note=%zz",
        "note=%C3",
        "note=%E4",
        "note=%C0%AF",
        "note=%ED%A0%80",
        "no%te=1",
        "=1",
        "note=\uFFFD"
      })
  void what_cannot_be_decoded_is_no_query(String raw) {
    assertThat(faultsOf("mass=1+g&" + raw)).containsExactly("not-a-query ");
  }

  @Test
  void a_single_value_told_twice_is_malformed() {
    assertThat(faultsOf("mass=1+g&mass=1+g&to.factor=2&to.factor=3"))
        .contains("duplicate-name /mass", "duplicate-name /to/factor");
    assertThat(faultsOf("mass=1+g&pick=/a&pick=/b")).containsExactly("duplicate-name /pick");
  }

  @Test
  void a_value_and_parts_of_one_name_contradict_each_other() {
    assertThat(faultsOf("mass=1+g&to=2&to.factor=3")).contains("duplicate-name /to");
  }

  @Test
  void numbers_of_entries_have_no_gaps() {
    assertThat(faultsOf("mass=1+g&earlier.0.ingredient=a&earlier.0.grams=1&earlier.2.ingredient=b"))
        .contains("inconsistent /earlier");
    assertThat(faultsOf("mass=1+g&earlier.00.ingredient=a")).contains("inconsistent /earlier");
  }

  @Test
  void names_with_nothing_before_or_after_a_dot_are_unknown() {
    assertThat(faultsOf("mass=1+g&to.=1&.to=1&to..factor=1"))
        .containsExactly("unknown-field /to.", "unknown-field /.to", "unknown-field /to..factor");
  }

  @Test
  void names_nest_only_so_deep() {
    assertThat(faultsOf("mass=1+g&" + "a.".repeat(33) + "a=1").get(0)).startsWith("too-deep ");
  }

  @Test
  void a_query_of_eight_kilobytes_is_read_and_a_longer_one_is_not() {
    String raw = "mass=1+g&k=";
    assertThat(input(raw + "x".repeat(8192 - raw.length())).mass()).isNotNull();

    Fault fault = Refused.only(() -> query(raw + "x".repeat(8193 - raw.length())));
    assertThat(fault.code()).isEqualTo(FaultCode.TOO_LONG_ADDRESS);
    assertThat(fault.message()).contains("8193", "8192");
  }

  @Test
  void the_cache_breaker_is_read_by_nobody_however_often_it_stands() {
    assertThat(query("k=1&k=2&mass=1+g").tree()).isEqualTo(Map.of("mass", "1 g"));
  }

  @Test
  void every_unknown_name_is_told_with_what_may_have_been_meant() {
    List<Fault> faults = Refused.faults(() -> input("mas=1+g&mass=1+g&step=x&to.facto=1"));

    assertThat(faults)
        .extracting(Fault::message)
        .anyMatch(message -> message.contains("did you mean mass"))
        .anyMatch(message -> message.contains("did you mean factor"));
    assertThat(faults).hasSizeGreaterThanOrEqualTo(3);
  }

  @Test
  void a_stray_comma_is_told_and_a_decimal_comma_is_read_when_asked_for() {
    assertThat(faultsOf("mass=2,5+kg&step=0,5"))
        .containsExactly("stray-comma /mass", "stray-comma /step");

    Weighing.Input input = input("mass=2,5+kg&step=0,5&loss=0,25&decimal=comma");
    assertThat(input.mass().grams()).isEqualTo(2500);
    assertThat(input.step()).isEqualTo(0.5);
    assertThat(input.loss().value()).isEqualTo(0.25);
  }

  /** In a country of decimal commas 1.250 kg are 1250 kg; elsewhere 1 kg and a quarter. */
  @Test
  void thousands_beside_decimal_commas_are_not_guessed() {
    assertThat(faultsOf("mass=1.250+kg&step=0.5&loss=0.25&decimal=comma"))
        .containsExactly("stray-point /mass");
    assertThat(input("mass=1+kg&step=0.5&decimal=comma").step()).isEqualTo(0.5);
    assertThat(input("mass=1.250+kg&decimal=point").mass().grams()).isEqualTo(1250);
  }

  @Test
  void options_are_read() {
    Options options =
        query(
                "format=csv&pick=/lines/0&decimal=comma&errors=text&units=us&bom=yes&partial=yes"
                    + "&sources=no&key=secret")
            .options();

    assertThat(options)
        .isEqualTo(new Options("csv", "/lines/0", true, true, "us", true, true, false, "secret"));
    assertThat(query(null).options()).isEqualTo(Options.none());
  }

  @Test
  void all_faults_of_options_and_input_are_told_together() {
    assertThat(
            faultsOf(
                "format=pdf&pick=lines&decimal=x&errors=x&units=x&bom=x&partial=x&sources=x&step=0"))
        .containsExactlyInAnyOrder(
            "unacceptable /format",
            "not-allowed /pick",
            "not-allowed /decimal",
            "not-allowed /errors",
            "not-allowed /units",
            "not-allowed /bom",
            "not-allowed /partial",
            "not-allowed /sources",
            "out-of-bounds /step",
            "exactly-one ");
  }

  @ParameterizedTest
  @ValueSource(strings = {"/a~2", "/a~", "a", "#/a"})
  void a_pointer_is_written_as_its_standard_says(String pointer) {
    assertThat(faultsOf("mass=1+g&pick=" + pointer.replace("#", "%23")))
        .containsExactly("not-allowed /pick");
  }

  @Test
  void units_become_part_of_an_input_that_displays_them() {
    assertThat(input("mass=1+g&units=us").units()).isEqualTo(Weighing.Shown.US);
    assertThat(input("units=metric", Map.of("mass", "1 g")).units())
        .isEqualTo(Weighing.Shown.METRIC);
    assertThat(Refused.at(() -> input("units=us", Map.of("mass", "1 g", "units", "us"))))
        .containsExactly("duplicate-name /units");
  }

  @Test
  void units_are_refused_where_none_are_displayed() {
    Query query = query("units=us&grams=1");

    Fault fault =
        Refused.only(
            () -> query.input(Weighing.Portion.class, References.UNCHECKED, Limits.usual()));
    assertThat(fault.pointer()).isEqualTo("/units");
    assertThat(fault.message()).contains("displays no figures");
  }

  @Test
  void beside_a_body_only_options_may_stand() {
    assertThat(input("format=text&k=7", Map.of("mass", "2 kg")).mass().grams()).isEqualTo(2000);
    assertThat(Refused.at(() -> input("mass=1+g&bom=x", Map.of("mass", "0 g"))))
        .containsExactlyInAnyOrder(
            "unknown-field /mass", "not-allowed /bom", "out-of-bounds /mass");
  }

  @Test
  void a_body_is_read_as_json_numbers_not_as_text() {
    assertThat(Refused.at(() -> input(null, Map.of("mass", "1 g", "step", "0.5"))))
        .containsExactly("wrong-type /step");
    assertThat(Refused.at(() -> input("decimal=comma", Map.of("mass", "2,5 kg"))))
        .containsExactly("stray-comma /mass");
    assertThat(Refused.at(() -> input(null, List.of()))).containsExactly("wrong-type ");
  }

  @Test
  void plain_queries_take_only_the_names_they_know() {
    assertThat(QueryInput.plain("q=rye+bread&limit=5&k=1&key=x", 100, "q", "limit", "cursor"))
        .isEqualTo(Map.of("q", "rye bread", "limit", "5"));
    assertThat(QueryInput.plain(null, 100, "q")).isEmpty();
    assertThat(Refused.at(() -> QueryInput.plain("q=1&q=2&limt=5", 100, "q", "limit")))
        .containsExactly("duplicate-name /q", "unknown-field /limt");
  }

  @ParameterizedTest
  @CsvSource({
    "errors=text, true",
    "a=%&errors=text&b, true",
    "errors=texts, false",
    "xerrors=text, false",
    ", false"
  })
  void whether_a_cell_wants_its_faults_as_text_is_seen_in_any_query(String raw, boolean text) {
    assertThat(QueryInput.wantsTextErrors(raw)).isEqualTo(text);
  }

  @Test
  void an_input_named_as_an_option_is_refused_when_it_is_loaded() {
    Options.refuseReserved(Weighing.Input.class);
    org.assertj.core.api.Assertions.assertThatThrownBy(() -> Options.refuseReserved(Taken.class))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageContaining("format");
  }

  /** An input that no query could say. */
  public record Taken(@tamis.engine.record.Described("A format") String format) {}
}
