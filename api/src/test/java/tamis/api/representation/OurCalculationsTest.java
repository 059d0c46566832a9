package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.atlassian.oai.validator.OpenApiInteractionValidator;
import com.atlassian.oai.validator.model.Request;
import com.atlassian.oai.validator.model.SimpleRequest;
import com.atlassian.oai.validator.model.SimpleResponse;
import com.atlassian.oai.validator.report.ValidationReport;
import java.util.ArrayList;
import java.util.List;
import java.util.ServiceLoader;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.api.http.Documented;
import tamis.engine.record.Form;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;

/** What holds for every calculation that the program brings along, and for one with every form. */
class OurCalculationsTest {
  private static final List<Offered> OFFERED = offered();
  private static final OpenApiInteractionValidator DOCUMENT =
      OpenApiInteractionValidator.createForInlineApiSpecification(
              new String(OpenApi.bytes(OFFERED, Documented.RECORDS, "1"), UTF_8))
          .build();

  private static List<Offered> offered() {
    List<Offered> offered = new ArrayList<>(List.of(new Offered("sample", new Weighing())));
    for (Plugin plugin : ServiceLoader.load(Plugin.class)) {
      plugin.calculations().forEach(one -> offered.add(new Offered(plugin.name(), one)));
    }
    return offered;
  }

  private static Stream<Calculation<?, ?>> calculations() {
    return OFFERED.stream().map(Offered::calculation);
  }

  private static ValidationReport posted(String name, String json) {
    return DOCUMENT.validateRequest(
        SimpleRequest.Builder.post("/v1/calculations/" + name)
            .withContentType("application/json")
            .withBody(json)
            .build());
  }

  private static ValidationReport answered(String name, String type, byte[] body) {
    return DOCUMENT.validateResponse(
        "/v1/calculations/" + name,
        Request.Method.POST,
        SimpleResponse.Builder.ok().withContentType(type).withBody(body).build());
  }

  @Test
  void plugins_are_on_the_class_path() {
    assertThat(OFFERED).hasSizeGreaterThanOrEqualTo(4);
  }

  @ParameterizedTest
  @MethodSource("calculations")
  void examples_fit_their_schema_and_are_read_as_they_were_written(Calculation<?, ?> calculation) {
    Options.refuseReserved(calculation.input());
    for (Record example : calculation.examples()) {
      byte[] json = ResultJson.bytes(example);
      RecordReader reader = new RecordReader(References.UNCHECKED, Limits.usual());

      assertThat(reader.read(calculation.input(), StrictJson.tree(json, JsonLimits.usual())))
          .isEqualTo(example);
      ValidationReport report = posted(calculation.name(), new String(json, UTF_8));
      assertThat(report.getMessages()).as(new String(json, UTF_8)).isEmpty();
    }
  }

  @ParameterizedTest
  @MethodSource("calculations")
  void a_misspelt_field_does_not_fit(Calculation<?, ?> calculation) {
    assertThat(posted(calculation.name(), "{\"misspelt\":1}").hasErrors()).isTrue();
  }

  @ParameterizedTest
  @MethodSource("calculations")
  void headings_of_every_table_are_distinct(Calculation<?, ?> calculation) {
    Form result = new Form.Nested(calculation.result());

    assertThat(Columns.ofRows(result).headings()).doesNotHaveDuplicates().isNotEmpty();
    assertThat(Columns.ofOne(result, "value").headings()).doesNotHaveDuplicates();
  }

  @Test
  void answers_and_problems_fit_the_description() {
    Answer<Weighing.Result> answer = Answer.of(WeighingResults.usual());
    for (String query : List.of("", "pick=/lines/0", "sources=no")) {
      Options options = QueryInput.options(query, new Weighing(), 100).options();
      byte[] json = ResultJson.answer("weighing", answer, 3, options);
      assertThat(answered("weighing", "application/json", json).getMessages()).isEmpty();
    }
    byte[] text = "2.5".getBytes(UTF_8);
    assertThat(answered("weighing", "text/plain; charset=utf-8", text).hasErrors()).isFalse();
    byte[] other = "{\"calculation\":\"weighing\",\"result\":{},\"remarks\":[]}".getBytes(UTF_8);
    assertThat(answered("weighing", "application/json", other).hasErrors()).isTrue();
    Problem problem = Problem.of(tamis.engine.fault.FaultCode.NULL, "null");
    ValidationReport report =
        DOCUMENT.validateResponse(
            "/v1/calculations/weighing",
            Request.Method.GET,
            SimpleResponse.Builder.status(422)
                .withContentType(Problem.CONTENT_TYPE)
                .withBody(problem.bytes())
                .build());
    assertThat(report.getMessages()).isEmpty();
  }
}
