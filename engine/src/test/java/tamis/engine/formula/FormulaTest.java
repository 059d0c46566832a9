package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static org.assertj.core.api.Assertions.tuple;
import static tamis.engine.formula.Card.map;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Measures;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** What a document must keep to, before anything is worked out. */
class FormulaTest {
  private static Formula read(Card card) {
    return new RecordReader(References.UNCHECKED, Limits.usual()).read(Formula.class, card.tree());
  }

  private static List<Fault> faults(Card card) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read(card));
    assertThat(refusal).as("a refusal was expected").isNotNull();
    return refusal.faults();
  }

  /** Stages written as {@code pour after syrup foam}, {@code foam meets syrup}. */
  private static Card stages(String... stages) {
    List<Object> all = new ArrayList<>();
    for (String stage : stages) {
      String[] words = stage.split(" ");
      Map<String, Object> one = map("id", words[0]);
      if (words.length > 1) {
        one.put(words[1], List.of(words).subList(2, words.length));
      }
      all.add(one);
    }
    return Card.of("cream", "100 g water").with("stages", all);
  }

  @Test
  void a_document_says_no_more_than_it_must() {
    Formula formula = read(Card.of("cream", "100 g water"));
    assertThat(formula.stages()).isEmpty();
    assertThat(formula.measuresOrUs()).isEqualTo(Measures.US);
    assertThat(formula.yieldOrNothing()).isEqualTo(Yield.nothingSaid());
    assertThat(formula.name()).isEqualTo("cream");
    assertThat(read(Card.of("cream", "1 g water").with("measures", "jp")).measuresOrUs())
        .isEqualTo(Measures.JP);
  }

  @Test
  void it_goes_by_its_title_or_its_id() {
    Card card = Card.of("cream", "100 g water").with("title", "Best cream");
    assertThat(read(card).name()).isEqualTo("Best cream");
    card.tree().remove("title");
    card.tree().remove("id");
    assertThat(read(card).name()).isEqualTo("this formula");
  }

  @ParameterizedTest
  @ValueSource(strings = {"Cream", "coffee cream", "-cream", "cream-", "crème", "cream@2", "a--b"})
  void an_id_is_lower_case_words_with_hyphens(String id) {
    assertThat(faults(Card.of(id, "100 g water")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.NOT_ALLOWED, "/id"));
  }

  @Test
  void stages_wait_for_each_other_in_any_order_that_has_an_end() {
    assertThat(
            read(stages("pour after syrup foam", "syrup", "foam meets syrup", "cool after pour"))
                .stages())
        .hasSize(4);
    assertThat(read(stages("d after b c", "b after a", "c after a", "a")).stages()).hasSize(4);
  }

  @Test
  void a_stage_that_stands_twice_is_refused() {
    assertThat(faults(stages("syrup", "foam", "syrup")))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.DUPLICATE, "/stages/2/id"));
  }

  @Test
  void a_stage_whose_id_is_no_id_is_refused() {
    assertThat(faults(stages("Cook the syrup".replace(' ', '_'))))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.NOT_ALLOWED, "/stages/0/id"));
  }

  @Test
  void a_stage_that_waits_for_itself_or_for_none_is_refused() {
    List<Fault> faults =
        faults(stages("syrup after foam syrup", "foam meets syrap", "pour meets pour"));
    assertThat(faults)
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(
            tuple(FaultCode.CYCLE, "/stages/0/after/1"),
            tuple(FaultCode.UNKNOWN_STAGE, "/stages/1/meets/0"),
            tuple(FaultCode.CYCLE, "/stages/2/meets/0"));
    assertThat(faults.get(1).message()).contains("syrap", "did you mean", "syrup");
    assertThat(faults.get(1).allowed()).contains("syrup", "foam");
  }

  @Test
  void stages_that_wait_in_a_circle_are_refused_and_the_way_is_named() {
    List<Fault> faults = faults(stages("a", "b after a d", "c after b", "d after c"));
    assertThat(faults)
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.CYCLE, "/stages/1/after"));
    assertThat(faults.get(0).message()).contains("b → d → c → b");
  }

  @Test
  void a_line_is_added_at_a_stage_that_is_there() {
    Card card = stages("syrup");
    card.lines().add(Card.line("1 g salt : stage=syrup"));
    card.lines().add(Card.line("1 g salt : stage=foam"));
    assertThat(faults(card))
        .extracting(Fault::code, Fault::pointer)
        .containsExactly(tuple(FaultCode.UNKNOWN_STAGE, "/lines/2/stage"));
  }

  @Test
  void a_reference_is_an_id_with_or_without_its_revision() {
    assertThat(FormulaRef.parse(" brioche ")).isEqualTo(new FormulaRef("brioche", null, null));
    assertThat(FormulaRef.parse("brioche@12")).isEqualTo(new FormulaRef("brioche", 12, null));
    for (String text : List.of("brioche", "brioche@3", "a-1@1")) {
      assertThat(FormulaRef.parse(text).text())
          .isEqualTo(text)
          .isEqualTo("" + FormulaRef.parse(text));
    }
    FormulaRef document = FormulaRef.of(read(Card.of("cream", "1 g water")));
    assertThat(document.text()).isNull();
    assertThat(document).hasToString("cream");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {"", "Brioche", "brioche@0", "brioche@", "brioche@1.5", "brioche@-1", "@1"})
  void what_is_no_reference_is_refused(String text) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> FormulaRef.parse(text));
    assertThat(refusal.faults().get(0).code()).isEqualTo(FaultCode.UNKNOWN_FORMULA);
  }
}
