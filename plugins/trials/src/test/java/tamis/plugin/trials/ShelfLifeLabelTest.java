package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class ShelfLifeLabelTest extends CalculationContract<ShelfLifeLabel.Input, ShelfLifeLabel.Result> {
  private static final Plugin ALLERGENS = new StandIns(new StandIns.Allergens());

  @Override
  protected Calculation<ShelfLifeLabel.Input, ShelfLifeLabel.Result> calculation() {
    return new ShelfLifeLabel();
  }

  @Override
  protected Plugin plugin() {
    return new TrialsPlugin();
  }

  /** Of its own it rests on no table; what `allergens` rests on is that plugin's matter. */
  @Override
  protected boolean namesSources() {
    return false;
  }

  @Override
  protected Kitchen kitchen() {
    return Book.ofCream().kitchen(ALLERGENS);
  }

  private static Answer<ShelfLifeLabel.Result> labelled(Kitchen kitchen, Object... input) {
    return new ShelfLifeLabel()
        .calculate(
            new RecordReader((References) kitchen, Limits.usual())
                .read(ShelfLifeLabel.Input.class, Book.map(input)),
            kitchen);
  }

  private static List<Fault> faults(Runnable call) {
    Refusal refusal = catchThrowableOfType(Refusal.class, call::run);
    assertThat(refusal).as("a refusal").isNotNull();
    return refusal.faults();
  }

  @ParameterizedTest(name = "made {0}, keeps {1}: use by {2} ({4})")
  @CsvFileSource(resources = "/shelf-life-label.csv", delimiter = '|', numLinesToSkip = 1)
  void use_by_is_made_and_the_keeping_time(
      String made, String keeps, String useBy, String printed, String source) {
    Map<String, Object> formula =
        Book.map(
            "id",
            "jam",
            "lines",
            List.of(Book.map("ingredient", "sugar-granulated", "quantity", "1 kg")),
            "shelfLife",
            List.of(Book.map("at", "4 °C", "for", keeps)));
    ShelfLifeLabel.Result result = labelled(kitchen(), "formula", formula, "made", made).result();
    assertThat(result.labels().get(0).useBy()).as(source).hasToString(useBy);
    assertThat(result.labels().get(0).text()).contains("\nUse by: " + printed + "\n");
  }

  @Test
  void the_label_says_what_it_is_in_lines() {
    Answer<ShelfLifeLabel.Result> answer =
        labelled(
            kitchen(),
            "formula",
            "cream@1",
            "made",
            "2026-04-11T08:10",
            "quantity",
            "850 g",
            "regime",
            "UK");
    assertThat(answer.result().labels())
        .singleElement()
        .satisfies(
            label ->
                assertThat(label.text())
                    .isEqualTo(
                        """
                        Cream
                        Quantity: 850 g
                        Made: 2026-04-11 08:10
                        Keep at: 4 °C
                        Use by: 2026-04-16 08:10
                        Contains: milk (Cream, UK).
                        May contain: egg.\
                        """));
    assertThat(answer.remarks())
        .extracting(Remark::kind, Remark::code)
        .contains(
            tuple(Remark.Kind.CAUTION, "keeping-time"),
            tuple(Remark.Kind.ESTIMATE, "keeping-time-as-written"),
            tuple(Remark.Kind.CAUTION, "cross-contact-unknown"));
  }

  @Test
  void the_quantity_is_the_finished_batch_unless_told() {
    assertThat(labelled(kitchen(), "formula", "cream", "made", "2026-04-11").result().quantity())
        .as("300 g of sugar and 400 g of butter")
        .isEqualTo("700 g");
    assertThat(
            labelled(kitchen(), "formula", "cream", "made", "2026-04-11", "to", Map.of("factor", 2))
                .result()
                .quantity())
        .isEqualTo("1400 g");
  }

  @Test
  void a_document_is_handed_on_whole() {
    Map<String, Object> formula =
        Book.map(
            "title",
            "Jam",
            "lines",
            List.of(Book.map("ingredient", "sugar-granulated", "quantity", "1 kg")),
            "shelfLife",
            List.of(Book.map("at", "4 °C", "for", "5 d")));
    assertThat(labelled(kitchen(), "formula", formula, "made", "2026-04-11").result().allergens())
        .isEqualTo("Contains: milk (Jam, EU).");
  }

  @Test
  void without_allergens_the_label_says_that_it_does_not_know() {
    Answer<ShelfLifeLabel.Result> answer =
        labelled(Book.ofCream().kitchen(), "formula", "cream", "made", "2026-04-11");
    assertThat(answer.result().allergens()).isNull();
    assertThat(answer.result().labels().get(0).text())
        .contains("Allergens: not known here")
        .doesNotContainIgnoringCase("free from");
    assertThat(answer.remarks()).extracting(Remark::code).contains("allergens-not-known");
  }

  @Test
  void a_part_that_keeps_shorter_is_told() {
    Map<String, Object> cake =
        Book.map(
            "id", "cake",
            "lines", List.of(Book.map("formula", "cream@1", "quantity", "100 g", "role", "part")),
            "shelfLife", List.of(Book.map("at", "4 °C", "for", "7 d")));
    assertThat(labelled(kitchen(), "formula", cake, "made", "2026-04-11").remarks())
        .extracting(Remark::message)
        .anyMatch(message -> message.contains("Cream in it keeps 5 d at 4 °C"));
  }

  @Test
  void a_part_told_for_a_colder_place_bounds_the_whole_and_one_for_a_warmer_does_not() {
    Map<String, Object> cake =
        Book.map(
            "id",
            "cake",
            "lines",
            List.of(Book.map("formula", "cream@1", "quantity", "100 g", "role", "part")),
            "shelfLife",
            List.of(
                Book.map("at", "12 °C", "for", "6 d"), Book.map("at", "-18 °C", "for", "90 d")));
    List<Remark> remarks = labelled(kitchen(), "formula", cake, "made", "2026-04-11").remarks();
    assertThat(remarks)
        .filteredOn(remark -> remark.code().equals("part-keeps-shorter"))
        .extracting(Remark::message)
        .containsExactly(
            "Cream in it keeps 5 d at 4 °C by its own formula, less than the 6 d told here for"
                + " 12 °C");
    assertThat(remarks)
        .filteredOn(remark -> remark.code().equals("part-keeping-time-not-told"))
        .singleElement()
        .satisfies(remark -> assertThat(remark.message()).contains("Cream", "-18 °C or colder"));
  }

  @Test
  void a_formula_without_a_keeping_time_is_refused() {
    Map<String, Object> bare =
        Book.map("lines", List.of(Book.map("ingredient", "salt", "quantity", "1 g")));
    assertThat(faults(() -> labelled(kitchen(), "formula", bare, "made", "2026-04-11")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.MISSING, "/formula"));
  }

  @Test
  void a_temperature_that_is_not_told_and_a_size_that_cannot_be_are_told_together() {
    assertThat(
            faults(
                () ->
                    labelled(
                        kitchen(),
                        "formula",
                        "cream",
                        "made",
                        "2026-04-11",
                        "at",
                        "20 °C",
                        "to",
                        Map.of("pieces", 3, "pieceMass", "100 g", "factor", 1))))
        .isNotEmpty();
    assertThat(
            faults(
                () -> labelled(kitchen(), "formula", "cream", "made", "2026-04-11", "at", "20 °C")))
        .extracting(Fault::code, Fault::pointer, Fault::allowed)
        .containsExactly(tuple(FaultCode.NO_SUCH_VALUE, "/at", "4 °C"));
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "yesterday",
        "2026-13-01",
        "2026-04-11 08:10",
        "11.4.2026",
        "",
        "+999999999-12-31T23:59",
        "0001-01-01",
        "2026-02-30"
      })
  void a_day_that_is_none_is_refused(String made) {
    assertThat(faults(() -> labelled(kitchen(), "formula", "cream", "made", made)))
        .extracting(Fault::pointer)
        .containsExactly("/made");
  }

  @ParameterizedTest
  @ValueSource(strings = {"as needed", "60 %"})
  void an_amount_that_is_none_is_refused(String quantity) {
    assertThat(
            faults(
                () ->
                    labelled(
                        kitchen(), "formula", "cream", "made", "2026-04-11", "quantity", quantity)))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.NO_SIZE, "/quantity"));
  }

  @Test
  void a_formula_in_percent_needs_the_amount_or_a_size() {
    Map<String, Object> loaf =
        Book.map(
            "lines",
            List.of(
                Book.map("ingredient", "bread-flour", "quantity", "100 %"),
                Book.map("ingredient", "water", "quantity", "65 %")),
            "shelfLife",
            List.of(Book.map("at", "20 °C", "for", "2 d")));
    assertThat(
            labelled(kitchen(), "formula", loaf, "made", "2026-04-11", "quantity", "12 each")
                .result()
                .quantity())
        .isEqualTo("12 each");
    assertThat(faults(() -> labelled(kitchen(), "formula", loaf, "made", "2026-04-11")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.NO_SIZE, "/to"));
  }
}
