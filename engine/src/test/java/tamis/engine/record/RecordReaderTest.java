package tamis.engine.record;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.math.BigDecimal;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.pan.PanRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;

class RecordReaderTest {
  private static final References NO_SULTANAS =
      reference -> {
        if (reference instanceof IngredientRef ref && ref.name().equals("sultana")) {
          throw Refusal.of(FaultCode.UNKNOWN_INGREDIENT, "no sultana here");
        }
      };
  private static final RecordReader BODY = new RecordReader(NO_SULTANAS, Limits.usual());
  private static final RecordReader QUERY =
      new RecordReader(NO_SULTANAS, Limits.usual(), true, false);
  private static final RecordReader COMMAS =
      new RecordReader(NO_SULTANAS, Limits.usual(), true, true);

  /** How a dough rises. */
  public enum Rise {
    YEAST,
    SOUR_DOUGH
  }

  /** A component of every kind. */
  public record Dough(
      @Described(value = "Flour", moreThan = "0 g", atMost = "10 kg") Mass flour,
      @Described(value = "Pieces", atLeast = "1", atMost = "200") @Nullable Integer pieces,
      @Described(value = "Hydration", unit = "%", atLeast = "40", lessThan = "120")
          @Nullable Double hydration,
      @Described("Exact") @Nullable BigDecimal exact,
      @Described("Counted") @Nullable Long counted,
      @Described("Lost") @Nullable Fraction loss,
      @Described("Whether it rests") @Nullable Boolean rests,
      @Described("Rise") @Nullable Rise rise,
      @Described(value = "Note", most = 5) @Nullable String note,
      @Described(value = "Fruit", optional = true, most = 3) List<IngredientRef> fruit,
      @Described(value = "Steps", optional = true, fewest = 2) List<Step> steps,
      @Described(value = "Composition", optional = true) Map<Nutrient, Double> per100g,
      @Described(value = "Names", optional = true, fewest = 1) Map<String, String> names,
      @Described(value = "Piece", nullAllowed = true) @Nullable Mass pieceMass,
      @Described("Pan") @Nullable PanRef pan,
      @Described("Formula") @Nullable FormulaRef formula,
      @Described(value = "Class", name = "class") @Nullable String kind) {}

  /** A step that is either timed or until a mass. */
  @ExactlyOne({"minutes", "until+reading"})
  public record Step(
      @Described("Minutes") @Nullable Double minutes,
      @Described("Until") @Nullable Mass until,
      @Described("Reading") @Nullable Mass reading) {
    public Step {
      if (minutes != null && minutes == 13) {
        throw Refusal.of(FaultCode.INCONSISTENT, "/minutes", "not thirteen");
      }
    }
  }

  /** A list that the operator limits. */
  public record Order(@Described(value = "Lines", limit = Limit.ORDER_LINES) List<String> lines) {}

  private static Map<String, @Nullable Object> with(Object... namesAndValues) {
    Map<String, @Nullable Object> tree = new LinkedHashMap<>();
    tree.put("flour", "1 kg");
    for (int i = 0; i < namesAndValues.length; i += 2) {
      tree.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return tree;
  }

  private static Dough read(Object... namesAndValues) {
    return BODY.read(Dough.class, with(namesAndValues));
  }

  private static List<Fault> faults(RecordReader reader, @Nullable Object tree) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> reader.read(Dough.class, tree));
    assertThat(refusal).as("refusal").isNotNull();
    return refusal.faults();
  }

  private static List<String> at(RecordReader reader, @Nullable Object tree) {
    return faults(reader, tree).stream().map(f -> f.code() + " " + f.pointer()).toList();
  }

  private static Fault only(Object... namesAndValues) {
    List<Fault> faults = faults(BODY, with(namesAndValues));
    assertThat(faults).hasSize(1);
    return faults.get(0);
  }

  @Test
  void what_is_left_out_is_null_or_empty() {
    Dough dough = read();

    assertThat(dough.flour()).isEqualTo(Mass.ofKilograms(1));
    assertThat(dough.pieces()).isNull();
    assertThat(dough.fruit()).isEmpty();
    assertThat(dough.per100g()).isEmpty();
  }

  @Test
  void every_form_is_read() {
    Dough dough =
        read(
            "pieces",
            12L,
            "hydration",
            65L,
            "exact",
            0.1,
            "counted",
            9_007_199_254_740_991L,
            "loss",
            "10 %",
            "rests",
            true,
            "rise",
            "sour-dough",
            "note",
            "five5",
            "fruit",
            List.of("raisin"),
            "per100g",
            Map.of("fat", 1.5),
            "class",
            "rich",
            "steps",
            List.of(Map.of("minutes", 5), Map.of("until", "1 g", "reading", "2 g")),
            "names",
            Map.of("en", "loaf"),
            "pan",
            "round-8x2-in",
            "formula",
            "brioche@3");

    assertThat(dough.pieces()).isEqualTo(12);
    assertThat(dough.hydration()).isEqualTo(65.0);
    assertThat(dough.exact()).isEqualByComparingTo("0.1");
    assertThat(dough.counted()).isEqualTo(9_007_199_254_740_991L);
    assertThat(dough.loss()).isEqualTo(new Fraction(0.1));
    assertThat(dough.rests()).isTrue();
    assertThat(dough.rise()).isEqualTo(Rise.SOUR_DOUGH);
    assertThat(dough.fruit()).containsExactly(new IngredientRef("raisin"));
    assertThat(dough.per100g()).containsExactly(Map.entry(Nutrient.FAT, 1.5));
    assertThat(dough.steps()).hasSize(2);
    assertThat(dough.formula().revision()).isEqualTo(3);
    assertThat(dough.kind()).isEqualTo("rich");
  }

  @Test
  void all_faults_are_told_at_once_each_with_its_place() {
    Map<String, @Nullable Object> tree = new HashMap<>();
    tree.put("pieces", 0);
    tree.put("hydration", "wet");
    tree.put("rise", "steam");
    tree.put("note", null);
    tree.put("flor", "1 kg");
    tree.put("fruit", List.of("raisin", "sultana", 3));
    tree.put("steps", List.of(Map.of("minutes", 13), Map.of(), "x"));
    tree.put("per100g", Map.of("fatt", 1, "fat", "x"));
    tree.put("pan", Map.of("shape", "round", "diameter", "0 cm", "a/b~", 1));

    assertThat(at(BODY, tree))
        .containsExactlyInAnyOrder(
            "missing /flour",
            "out-of-bounds /pieces",
            "wrong-type /hydration",
            "not-allowed /rise",
            "null /note",
            "unknown-field /flor",
            "unknown-ingredient /fruit/1",
            "wrong-type /fruit/2",
            "inconsistent /steps/0/minutes",
            "exactly-one /steps/1",
            "wrong-type /steps/2",
            "not-allowed /per100g/fatt",
            "wrong-type /per100g/fat",
            "out-of-bounds /pan/diameter",
            "unknown-field /pan/a~1b~0");
  }

  @Test
  void an_unknown_field_is_told_with_what_may_have_been_meant() {
    Fault fault = only("hidration", 65);

    assertThat(fault.message()).isEqualTo("`hidration` is not known here; did you mean hydration?");
    assertThat(fault.given()).isEqualTo("hidration");
    assertThat(fault.allowed()).contains("flour", "class").doesNotContain("kind");
  }

  @ParameterizedTest
  @CsvSource({
    "flour, 0 g, more than 0 g and at most 10 kg",
    "flour, 10.001 kg, more than 0 g and at most 10 kg",
    "pieces, 0, at least 1 and at most 200",
    "pieces, 201, at least 1 and at most 200",
    "hydration, 39.9, at least 40 and less than 120",
    "hydration, 120, at least 40 and less than 120",
  })
  void bounds_are_told_as_they_are_described(String name, String value, String allowed) {
    Map<String, Object> tree = new HashMap<>(Map.of("flour", "1 kg"));
    tree.put(name, value);

    List<Fault> faults = faults(QUERY, tree);
    assertThat(faults).hasSize(1);
    assertThat(faults.get(0).code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
    assertThat(faults.get(0).allowed()).isEqualTo(allowed);
    assertThat(faults.get(0).message())
        .isEqualTo("`" + name + "` must be " + allowed + ", was " + value);
  }

  @Test
  void values_on_their_bounds_are_read() {
    assertThat(read("pieces", 1).pieces()).isEqualTo(1);
    assertThat(read("pieces", 200).pieces()).isEqualTo(200);
    assertThat(read("hydration", 40).hydration()).isEqualTo(40);
    assertThat(read("flour", "10 kg").flour().grams()).isEqualTo(10_000);
  }

  @Test
  void exactly_one_of_several_is_given() {
    assertThat(only("steps", List.of(Map.of(), Map.of("minutes", 1))).message())
        .isEqualTo("needs exactly one of minutes, until+reading, was given none");
    Map<String, Object> both = Map.of("minutes", 1, "until", "1 g", "reading", "1 g");
    assertThat(only("steps", List.of(both, Map.of("minutes", 1))).message())
        .endsWith("was given minutes and until+reading");
    Fault half = only("steps", List.of(Map.of("until", "1 g"), Map.of("minutes", 1)));
    assertThat(half.code()).isEqualTo(FaultCode.MISSING);
    assertThat(half.pointer()).isEqualTo("/steps/0/reading");
  }

  @Test
  void text_or_an_object_is_read_and_nothing_else() {
    assertThat(read("pan", "round-8x2-in").pan().object()).isNull();
    Map<String, Object> round = Map.of("shape", "round", "diameter", "20 cm", "height", "5 cm");
    assertThat(read("pan", round).pan().text()).isNull();
    assertThat(read("pan", round).pan().object().diameter().toString()).isEqualTo("0.2 m");
    assertThat(only("pan", 8).code()).isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(only("formula", "Not An Id").pointer()).isEqualTo("/formula");
    assertThat(only("formula", Map.of("title", "x")).pointer()).isEqualTo("/formula/lines");
  }

  @Test
  void a_reference_as_long_as_a_body_is_refused_like_a_short_one() {
    String endless = "a-".repeat(500_000) + "a";

    assertThat(only("formula", endless + "-").code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(only("formula", "brioche@0").code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(only("formula", "brioche@").code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    assertThat(read("formula", endless).formula().id()).isEqualTo(endless);
    for (String id : List.of("", "-a", "a-", "a--b", "A", "a b", "ä")) {
      assertThat(only("formula", id).code()).as(id).isEqualTo(FaultCode.UNKNOWN_FORMULA);
    }
  }

  @Test
  void null_is_read_as_left_out_only_where_documents_write_it() {
    assertThat(read("pieceMass", null).pieceMass()).isNull();
    assertThat(only("note", null).code()).isEqualTo(FaultCode.NULL);
    assertThat(at(BODY, null)).containsExactly("null ");
    assertThat(at(BODY, with("fruit", Collections.singletonList(null))))
        .containsExactly("null /fruit/0");
  }

  @Test
  void numbers_are_whole_where_they_count() {
    assertThat(only("pieces", 1.5).code()).isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(only("pieces", 3_000_000_000L).code()).isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(only("counted", new BigDecimal("1.00000000000000000001")).code())
        .isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(only("counted", new BigDecimal("9007199254740993.0")).code())
        .isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(read("counted", new BigDecimal("7.000")).counted()).isEqualTo(7L);
  }

  @Test
  void numbers_are_finite_and_never_lost_to_zero() {
    for (Object huge : List.of(new BigDecimal("1e999"), new BigDecimal("1e-999"), Double.NaN)) {
      assertThat(only("exact", huge).code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
      assertThat(only("hydration", huge).code()).isEqualTo(FaultCode.OUT_OF_BOUNDS);
    }
    assertThat(Double.doubleToRawLongBits(read("loss", -0.0).loss().value())).isZero();
  }

  @Test
  void a_bare_number_is_no_mass_but_may_be_a_fraction() {
    assertThat(only("flour", 500).code()).isEqualTo(FaultCode.NO_UNIT);
    assertThat(read("loss", 0.25).loss().value()).isEqualTo(0.25);
    assertThat(only("loss", 25).message()).contains("25 %");
    assertThat(at(QUERY, Map.of("flour", "500"))).containsExactly("no-unit /flour");
    assertThat(QUERY.read(Dough.class, Map.of("flour", "1 g", "loss", "0.25")).loss().value())
        .isEqualTo(0.25);
  }

  @Test
  void text_is_no_number_in_a_body_and_is_one_in_a_query() {
    assertThat(only("pieces", "12").code()).isEqualTo(FaultCode.WRONG_TYPE);
    assertThat(only("rests", "yes").code()).isEqualTo(FaultCode.WRONG_TYPE);

    Map<String, String> query =
        Map.of("flour", "1 kg", "pieces", "12", "rests", "no", "hydration", "6.5e1");
    Dough dough = QUERY.read(Dough.class, query);
    assertThat(dough.pieces()).isEqualTo(12);
    assertThat(dough.rests()).isFalse();
    assertThat(dough.hydration()).isEqualTo(65);
    assertThat(at(QUERY, Map.of("flour", "1 g", "pieces", "a dozen", "rests", "maybe")))
        .containsExactlyInAnyOrder("wrong-type /pieces", "wrong-type /rests");
  }

  @Test
  void a_number_of_a_query_has_so_many_digits_and_no_more() {
    String most = "65." + "0".repeat(38);
    assertThat(QUERY.read(Dough.class, Map.of("flour", "1 g", "hydration", most)).hydration())
        .isEqualTo(65);
    assertThat(at(QUERY, Map.of("flour", "1 g", "hydration", most + "0")))
        .containsExactly("too-many-digits /hydration");
    assertThat(at(QUERY, Map.of("flour", "1 g", "exact", "1e999999")))
        .containsExactly("out-of-bounds /exact");
  }

  @Test
  void a_comma_is_a_decimal_mark_only_when_it_is_agreed() {
    Map<String, String> query = Map.of("flour", "1,5 kg", "hydration", "65,5", "loss", "2,5 %");

    assertThat(at(QUERY, query))
        .containsExactlyInAnyOrder(
            "stray-comma /flour", "stray-comma /hydration", "stray-comma /loss");
    Dough dough = COMMAS.read(Dough.class, query);
    assertThat(dough.flour().grams()).isEqualTo(1500);
    assertThat(dough.hydration()).isEqualTo(65.5);
    assertThat(dough.loss().value()).isEqualTo(0.025);
    assertThat(COMMAS.read(Dough.class, Map.of("flour", "1.5 kg")).flour().grams()).isEqualTo(1500);
    assertThat(at(COMMAS, Map.of("flour", "1.250 kg"))).containsExactly("stray-point /flour");
    assertThat(at(COMMAS, Map.of("flour", "1.234,5 g"))).containsExactly("stray-point /flour");
    assertThat(at(COMMAS, Map.of("flour", "1,234.5 g")))
        .containsExactly("unreadable-quantity /flour");
  }

  @Test
  void lists_and_maps_and_texts_keep_to_their_size() {
    assertThat(read("fruit", List.of("a", "b", "c")).fruit()).hasSize(3);
    assertThat(only("fruit", List.of("a", "b", "c", "sultana")).message())
        .isEqualTo("has 4 entries, at most 3 are read");
    assertThat(only("steps", List.of(Map.of("minutes", 1))).code()).isEqualTo(FaultCode.MISSING);
    assertThat(only("names", Map.of()).code()).isEqualTo(FaultCode.MISSING);
    assertThat(only("note", "sixsix").code()).isEqualTo(FaultCode.TOO_MANY);
  }

  @Test
  void the_operator_may_limit_a_list_further() {
    Limits two = new Limits(Map.of(Limit.ORDER_LINES, 2), 64, 20_000, 40);
    RecordReader strict = new RecordReader(References.UNCHECKED, two);

    assertThat(strict.read(Order.class, Map.of("lines", List.of("a", "b"))).lines()).hasSize(2);
    Refusal refusal =
        catchThrowableOfType(
            Refusal.class, () -> strict.read(Order.class, Map.of("lines", List.of("a", "b", "c"))));
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.TOO_MANY);
  }

  @Test
  void what_was_given_is_repeated_only_so_far() {
    Fault fault = only("hydration", "x".repeat(500_000));

    assertThat(fault.given()).hasSizeLessThan(250);
    assertThat(fault.message()).hasSizeLessThan(1_100);
    List<@Nullable Object> nulls = Arrays.asList(new Object[500_000]);
    RecordReader open = new RecordReader(References.UNCHECKED, Limits.usual());
    Refusal refusal =
        catchThrowableOfType(Refusal.class, () -> open.read(Dough.class, with("steps", nulls)));
    assertThat(refusal.faults()).hasSizeBetween(1_000, 10_000);
    assertThat(refusal.getMessage()).hasSizeLessThan(100_000);
  }
}
