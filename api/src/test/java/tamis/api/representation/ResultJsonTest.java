package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.formula.Formula;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;

class ResultJsonTest {
  private static final String USUAL =
      "{\"factor\":2.5,\"price\":\"11.50 EUR\",\"portion\":{\"grams\":113.4},"
          + "\"per100g\":{\"protein\":0,\"fat\":12.4},\"lines\":["
          + "{\"ingredient\":\"egg-white\",\"grams\":150,\"low\":148.5,\"price\":\"4.40 EUR\","
          + "\"how\":\"on-the-scale\"},"
          + "{\"ingredient\":\"sugar-granulated\",\"grams\":300},"
          + "{\"ingredient\":\"egg-white\",\"grams\":75.25,\"how\":\"by-the-cup\"}],"
          + "\"incomplete\":[\"/per100g/fat\"]";

  private static String json(Object value) {
    return new String(ResultJson.bytes(value), UTF_8);
  }

  private static String answer(Answer<?> answer, String rawQuery) {
    Options options = QueryInput.options(rawQuery, new Weighing(), 1000).options();
    return new String(ResultJson.answer("weighing", answer, 41, options), UTF_8);
  }

  @Test
  void what_is_absent_is_left_out_and_numbers_are_short() {
    assertThat(json(WeighingResults.usual())).isEqualTo(USUAL + "}");
  }

  @Test
  void plain_values_are_written_too() {
    assertThat(json(Arrays.asList(1, 2.0, "ä\"\n", true, null, Map.of("a", List.of()))))
        .isEqualTo("[1,2,\"ä\\\"\\n\",true,null,{\"a\":[]}]");
    assertThat(json(Weighing.How.ON_THE_SCALE)).isEqualTo("\"on-the-scale\"");
  }

  @Test
  void an_answer_tells_remarks_sources_and_revision() {
    Remark remark =
        new Remark(Remark.Kind.CAUTION, "hot-syrup", "syrup burns", "/formula/stages/0");
    Cited cited =
        new Cited("densities", "flour", "weighed", null, "measured", List.of("/lines/0/grams"));
    Answer<Weighing.Result> answer =
        new Answer<>(WeighingResults.usual(), List.of(remark), List.of(cited));

    String start = "{\"calculation\":\"weighing\",\"result\":" + USUAL;
    String bill =
        ",\"bill\":{\"egg-white\":{\"grams\":225.25},\"sugar-granulated\":{\"grams\":300}}}";
    String remarks =
        ",\"remarks\":[{\"kind\":\"caution\",\"code\":\"hot-syrup\",\"message\":\"syrup burns\","
            + "\"pointer\":\"/formula/stages/0\"}]";
    String sources =
        ",\"sources\":[{\"table\":\"densities\",\"row\":\"flour\",\"source\":\"weighed\","
            + "\"basis\":\"measured\",\"pointers\":[\"/lines/0/grams\"]}]";
    assertThat(answer(answer, null))
        .isEqualTo(start + bill + remarks + sources + ",\"revision\":41}");
    assertThat(answer(answer, "sources=no"))
        .isEqualTo(start + bill + remarks + ",\"revision\":41}");
  }

  @Test
  void what_is_picked_stands_beside_the_result() {
    Answer<Weighing.Result> answer = Answer.of(WeighingResults.usual());

    assertThat(answer(answer, "pick=/bill/egg-white/grams"))
        .contains(",\"picked\":225.25,\"remarks\":[]");
    assertThat(answer(answer, "pick=/lines/1"))
        .contains(",\"picked\":{\"ingredient\":\"sugar-granulated\",\"grams\":300},");
    assertThat(answer(answer, "pick=/limitedBy")).contains(",\"picked\":null,");
    assertThat(Refused.at(() -> answer(answer, "pick=/portion/fat")))
        .containsExactly("incomplete /pick");
    assertThat(answer(answer, "pick=/portion/fat&partial=yes")).contains(",\"picked\":null,");
  }

  @Test
  void a_result_with_a_bill_of_its_own_gets_no_other() {
    String json = answer(Answer.of(new Billed(List.of(WeighingResults.named("egg")), "own")), null);

    assertThat(json).contains("\"bill\":\"own\"").containsOnlyOnce("\"bill\"");
  }

  /** A result that has a bill. */
  public record Billed(
      @tamis.engine.record.Described("Lines") List<Weighing.Line> lines,
      @tamis.engine.record.Described("A bill") String bill) {}

  @Test
  void a_number_that_is_not_finite_is_a_failure_with_its_place() {
    Weighing.Result broken =
        WeighingResults.of(
            1,
            null,
            List.of(
                WeighingResults.line("egg", 1, null, null, null),
                WeighingResults.line("salt", Double.NaN, null, null, null)));

    Fault fault = Refused.only(() -> answer(Answer.of(broken), null));
    assertThat(fault.code()).isEqualTo(FaultCode.FAILED);
    assertThat(fault.pointer()).isEqualTo("/result/lines/1/grams");
  }

  @Test
  void a_document_is_written_as_it_is_read() {
    String document =
        "{\"id\":\"coffee-cream\",\"title\":\"Coffee cream\",\"measures\":\"metric\",\"lines\":["
            + "{\"ingredient\":\"egg-white\",\"quantity\":\"150 g\",\"remains\":0.4},"
            + "{\"formula\":\"coffee-syrup@3\",\"quantity\":\"60 g\",\"role\":\"part\"},"
            + "{\"formula\":{\"lines\":[{\"ingredient\":\"salt\",\"quantity\":\"as needed\"}]},"
            + "\"quantity\":\"1 1/2 cup\"}],"
            + "\"yield\":{\"portions\":12,\"makeUpLoss\":0.02,\"pans\":["
            + "{\"pan\":\"round-20x5-cm\",\"count\":2},{\"pan\":{\"shape\":\"round\","
            + "\"diameter\":\"0.2 m\",\"height\":\"0.05 m\"}}]}}";
    Formula formula =
        new RecordReader(References.UNCHECKED, Limits.usual())
            .read(Formula.class, StrictJson.tree(document.getBytes(UTF_8), JsonLimits.usual()));

    assertThat(json(formula)).isEqualTo(document);
  }

  @Test
  void an_answer_without_end_is_cut_off() {
    Capped bytes = new Capped(10);
    bytes.write(new byte[10], 0, 10);

    assertThat(Refused.only(() -> bytes.write(1)).code()).isEqualTo(FaultCode.FAILED);
    assertThat(Refused.only(() -> bytes.write(new byte[1], 0, 1)).message()).contains("10 bytes");
  }
}
