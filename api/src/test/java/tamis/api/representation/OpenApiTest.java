package tamis.api.representation;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import io.swagger.v3.oas.models.OpenAPI;
import io.swagger.v3.oas.models.Operation;
import io.swagger.v3.oas.models.media.Schema;
import io.swagger.v3.oas.models.parameters.Parameter;
import io.swagger.v3.parser.OpenAPIV3Parser;
import io.swagger.v3.parser.core.models.SwaggerParseResult;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;

class OpenApiTest {
  private static final Pattern REFERENCE = Pattern.compile("\"\\$ref\":\"([^\"]+)\"");
  private static final List<Offered> OFFERED =
      List.of(new Offered("scale", new Weighing()), new Offered("other", new Renamed()));

  /** The same records under another name and from another plugin. */
  private static final class Renamed
      implements tamis.engine.spi.Calculation<Weighing.Portion, Weighing.Result> {
    @Override
    public String name() {
      return "heavy-weighing";
    }

    @Override
    public String title() {
      return "What a portion weighs.";
    }

    @Override
    public Class<Weighing.Portion> input() {
      return Weighing.Portion.class;
    }

    @Override
    public Class<Weighing.Result> result() {
      return Weighing.Result.class;
    }

    @Override
    public List<Weighing.Portion> examples() {
      return List.of();
    }

    @Override
    public tamis.engine.spi.Answer<Weighing.Result> calculate(
        Weighing.Portion input, tamis.engine.spi.Kitchen kitchen) {
      return tamis.engine.spi.Answer.of(WeighingResults.usual());
    }
  }

  /** What the annotation processor leaves of one handler. */
  private static Map<String, Object> annotated() {
    String json =
        """
        {"openapi":"3.0.3","security":null,"paths":{"/v1/formulas/{id}":{
          "parameters":[],
          "get":{"tags":["formulas"],"summary":"Reads a formula","operationId":"getFormula",
            "security":[],
            "deprecated":false,
            "parameters":[{"name":"id","in":"path","required":true,"schema":{"type":"string"}},
              {"name":"limit","in":"query","allowEmptyValue":false,
               "schema":{"type":"integer","example":"100"}}],
            "responses":{"200":{"description":"OK","content":{"application/json":{
              "schema":{"$ref":"#/components/schemas/Formula"}}}}}}}},
         "components":{"schemas":{"Formula":{"type":"object"}}}}
        """;
    @SuppressWarnings("unchecked")
    Map<String, Object> tree =
        (Map<String, Object>) StrictJson.tree(json.getBytes(UTF_8), JsonLimits.usual());
    return new LinkedHashMap<>(tree);
  }

  private static String json() {
    return new String(
        ResultJson.bytes(
            OpenApi.document(
                annotated(), OFFERED, List.of(Formula.class, Ingredient.class), "1.2.3")),
        UTF_8);
  }

  private static OpenAPI parsed() {
    SwaggerParseResult result = new OpenAPIV3Parser().readContents(json(), null, null);
    assertThat(result.getMessages()).isEmpty();
    return result.getOpenAPI();
  }

  private static Schema<?> schema(String name) {
    return parsed().getComponents().getSchemas().get(name);
  }

  @Test
  void an_independent_parser_finds_nothing_wrong() {
    OpenAPI document = parsed();

    assertThat(document.getPaths().keySet())
        .containsExactlyInAnyOrder(
            "/v1/formulas/{id}",
            "/v1/calculations/weighing",
            "/v1/calculations/weighing.csv",
            "/v1/calculations/heavy-weighing",
            "/v1/calculations/heavy-weighing.csv");
    assertThat(document.getInfo().getVersion()).isEqualTo("1.2.3");
    assertThat(json()).containsOnlyOnce("\"security\":[]").doesNotContain("\"security\":null");
  }

  @Test
  void every_reference_leads_somewhere() {
    String json = json();
    List<String> references =
        REFERENCE.matcher(json).results().map(found -> found.group(1)).distinct().toList();
    Map<?, ?> document = (Map<?, ?>) StrictJson.tree(json.getBytes(UTF_8), new JsonLimits(100, 40));

    assertThat(references).hasSizeGreaterThan(15);
    for (String reference : references) {
      Object at = document;
      for (String step : reference.substring(2).split("/")) {
        at = ((Map<?, ?>) at).get(step);
      }
      assertThat(at).as(reference).isNotNull().isNotEqualTo(Map.of());
    }
  }

  @Test
  void each_operation_has_what_generators_and_linters_want() {
    Set<String> ids = new TreeSet<>();
    List<Operation> operations = new ArrayList<>();
    parsed().getPaths().values().forEach(path -> operations.addAll(path.readOperations()));

    assertThat(operations).hasSize(7);
    for (Operation operation : operations) {
      assertThat(ids.add(operation.getOperationId())).as(operation.getOperationId()).isTrue();
      assertThat(operation.getSummary()).isNotBlank();
      assertThat(operation.getDescription()).isNotBlank();
      assertThat(operation.getTags()).hasSize(1);
      assertThat(operation.getResponses()).containsKeys("200", "400", "422", "500");
      if (operation.getParameters() != null) {
        List<String> names = operation.getParameters().stream().map(OpenApiTest::name).toList();
        assertThat(names).doesNotHaveDuplicates();
      }
    }
    assertThat(parsed().getTags())
        .extracting(tag -> tag.getName())
        .containsExactly("formulas", "other", "scale");
    assertThat(parsed().getServers()).isNotEmpty();
    assertThat(parsed().getInfo().getContact()).isNotNull();
  }

  private static String name(Parameter parameter) {
    return parameter.get$ref() == null ? parameter.getName() : parameter.get$ref();
  }

  @Test
  void records_of_one_simple_name_keep_schemas_of_their_own() {
    assertThat(parsed().getComponents().getSchemas())
        .containsKeys("Line", "ScaleWeighingLine", "Formula", "Problem", "ProblemReason");
    assertThat(schema("Line").getProperties()).containsKey("quantity");
    assertThat(schema("ScaleWeighingLine").getProperties()).containsKey("grams");
  }

  @Test
  void what_must_be_given_and_its_bounds_are_told() {
    Schema<?> input = schema("ScaleWeighingInput");

    assertThat(input.getRequired()).isNull();
    assertThat(input.getAdditionalProperties()).isEqualTo(false);
    assertThat(input.getOneOf())
        .extracting(one -> String.valueOf(one.getRequired()))
        .containsExactly("[mass]", "[pieceMass, pieces]");
    Schema<?> pieces = (Schema<?>) input.getProperties().get("pieces");
    assertThat(pieces.getType()).isEqualTo("integer");
    assertThat(pieces.getMinimum()).isEqualByComparingTo(BigDecimal.ZERO);
    assertThat(pieces.getNot().getEnum().toString()).isEqualTo("[0]");
    assertThat(pieces.getMaximum()).isEqualByComparingTo("100");
    assertThat(pieces.getExample()).isEqualTo(12);
    Schema<?> step = (Schema<?>) input.getProperties().get("step");
    assertThat(step.getMinimum()).isEqualByComparingTo("0.1");
    assertThat(step.getMaximum()).isEqualByComparingTo("50");
    assertThat(step.getNot().getEnum().toString()).isEqualTo("[50]");
    assertThat(json()).doesNotContain("exclusive");
    assertThat(step.getDescription()).isEqualTo("Scale step, in g");
    assertThat(((Schema<?>) input.getProperties().get("mass")).getDescription())
        .isEqualTo("The whole mass (mass, more than 0 g and at most 10 kg)");
    assertThat(((Schema<?>) input.getProperties().get("earlier")).getMaxItems()).isEqualTo(3);
    assertThat(((Schema<?>) input.getProperties().get("note")).getMaxLength()).isEqualTo(40);
    assertThat(((Schema<?>) input.getProperties().get("how")).get$ref())
        .endsWith("/ScaleWeighingHow");
    assertThat(schema("ScaleWeighingHow").getEnum().toString())
        .isEqualTo("[on-the-scale, by-the-cup]");
    assertThat(((Schema<?>) input.getProperties().get("to")).get$ref()).endsWith("/To");
    assertThat(((Schema<?>) input.getProperties().get("loss")).get$ref()).endsWith("/Fraction");
    assertThat(schema("Fraction").getOneOf()).hasSize(2);
    assertThat(input.getDescription()).contains("`loss`: Lost (fraction)");
    assertThat(schema("Formula").getRequired()).containsExactly("lines");
    assertThat(schema("FormulaRef").getOneOf()).hasSize(2);
  }

  @Test
  void results_and_answers_are_described() {
    Schema<?> result = schema("ScaleWeighingResult");
    Schema<?> answer = schema("WeighingAnswer");

    assertThat(result.getRequired()).containsExactly("factor", "lines", "per100g");
    assertThat(result.getProperties()).containsKey("bill");
    assertThat(schema("ScaleWeighingLine").getProperties()).doesNotContainKey("bill");
    assertThat(answer.getRequired())
        .containsExactlyInAnyOrder("calculation", "result", "remarks", "revision");
    assertThat(answer.getProperties()).containsKeys("sources", "picked");
    Schema<?> nutrients = (Schema<?>) result.getProperties().get("per100g");
    assertThat(nutrients.getProperties()).containsKeys("fat", "sodiumMg");
  }

  @Test
  void queries_are_told_name_by_name() {
    Operation get = parsed().getPaths().get("/v1/calculations/weighing").getGet();
    List<String> names = get.getParameters().stream().map(OpenApiTest::name).toList();

    assertThat(names)
        .contains(
            "mass",
            "pieces",
            "formula",
            "to.mass",
            "to.pans.0.pan",
            "to.pans.0.pan.shape",
            "to.pans.0.count",
            "to.line.quantity",
            "pan",
            "pan.diameter",
            "named",
            "shares.NAME",
            "earlier.0.grams",
            "format",
            "#/components/parameters/Pick",
            "#/components/parameters/Units")
        .doesNotContain("units", "formula.title", "to", "to.pans");
    assertThat(get.getResponses().get("200").getContent())
        .containsOnlyKeys("application/json", "text/csv", "text/plain", "image/svg+xml");
    Operation other = parsed().getPaths().get("/v1/calculations/heavy-weighing").getGet();
    assertThat(other.getParameters().stream().map(OpenApiTest::name).toList())
        .contains("grams")
        .doesNotContain("#/components/parameters/Units");
    assertThat(other.getParameters().get(0).getRequired()).isTrue();
  }

  @Test
  void examples_of_a_calculation_are_shown_as_they_are_sent() {
    Operation post = parsed().getPaths().get("/v1/calculations/weighing").getPost();
    Object example =
        post.getRequestBody()
            .getContent()
            .get("application/json")
            .getExamples()
            .get("example1")
            .getValue();

    assertThat(String.valueOf(example))
        .isEqualTo(
            "{\"mass\":\"3000 g\",\"formula\":\"brioche\",\"loss\":0.1,\"how\":\"by-the-cup\"}");
  }

  @Test
  void examples_of_annotated_numbers_are_numbers() {
    Parameter limit = parsed().getPaths().get("/v1/formulas/{id}").getGet().getParameters().get(1);

    assertThat(limit.getSchema().getExample()).isEqualTo(100);
    assertThat(json()).doesNotContain("allowEmptyValue", "\"deprecated\"");
  }

  @Test
  void what_the_annotation_processor_left_is_part_of_the_served_document() {
    Map<?, ?> document =
        (Map<?, ?>)
            StrictJson.tree(OpenApi.bytes(OFFERED, List.of(), "1"), new JsonLimits(100, 40));
    Map<?, ?> paths = (Map<?, ?>) document.get("paths");

    for (String path : FixedPaths.of(FixedPaths.annotated()).keySet()) {
      assertThat(paths.containsKey(path)).as(path).isTrue();
    }
    assertThat(paths.containsKey("/v1/calculations/weighing")).isTrue();
  }
}
