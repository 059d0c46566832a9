package tamis.api.representation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import tamis.engine.note.Cited;
import tamis.engine.note.Remark;
import tamis.engine.record.Shape;
import tamis.engine.spi.Calculation;

/** Describes the paths of one calculation. */
final class CalculationPaths {
  static final String BASE = "/v1/calculations/";

  private final Offered offered;
  private final Calculation<?, ?> calculation;
  private final Schemas schemas;
  private final String capital;

  CalculationPaths(Offered offered, Schemas schemas) {
    this.offered = offered;
    this.calculation = offered.calculation();
    this.schemas = schemas;
    this.capital = SchemaNames.capital(calculation.name());
  }

  void addTo(Map<String, Object> paths) {
    String path = BASE + calculation.name();
    Map<String, Object> answers = answers();
    paths.put(path, Tree.of("get", get(answers), "post", post(answers)));
    paths.put(path + ".csv", Tree.of("get", csv()));
  }

  private Map<String, Object> get(Map<String, Object> answers) {
    Map<String, Object> get = operation("get" + capital, calculation.title());
    get.put("parameters", parameters(true, true));
    get.put("responses", Responses.of(answers, true, false));
    return get;
  }

  private Map<String, Object> csv() {
    Map<String, Object> get = operation("get" + capital + "Csv", calculation.title() + " As CSV.");
    get.put("parameters", parameters(true, false));
    Map<String, Object> content = new LinkedHashMap<>();
    content.put(Format.CSV.mediaType(), Responses.text());
    content.put(Format.TEXT.mediaType(), Responses.text());
    get.put("responses", Responses.of(content, true, false));
    return get;
  }

  private Map<String, Object> post(Map<String, Object> answers) {
    Map<String, Object> post = operation("post" + capital, calculation.title());
    post.put("parameters", parameters(false, true));
    Map<String, Object> json = Tree.of("schema", input());
    Map<String, Object> examples = examples();
    if (!examples.isEmpty()) {
      json.put("examples", examples);
    }
    post.put(
        "requestBody",
        Tree.of("required", true, "content", Tree.of(Format.JSON.mediaType(), json)));
    post.put("responses", Responses.of(answers, false, true));
    return post;
  }

  private Map<String, Object> operation(String id, String summary) {
    String title = summary.endsWith(".") ? summary.substring(0, summary.length() - 1) : summary;
    return Tree.of(
        "operationId",
        id,
        "summary",
        title,
        "description",
        summary,
        "tags",
        List.of(offered.plugin()));
  }

  private List<Object> parameters(boolean inputToo, boolean formatToo) {
    List<Object> parameters = new ArrayList<>();
    if (inputToo) {
      parameters.addAll(QueryNames.of(calculation.input(), offered.plugin(), schemas));
    }
    boolean displays = Shape.of(calculation.input()).component("units") != null;
    List<String> formats = Formats.of(calculation).stream().map(Format::name).toList();
    parameters.addAll(OptionParameters.of(formatToo ? formats : List.of("csv"), displays));
    return parameters;
  }

  private Map<String, Object> answers() {
    Map<String, Object> content = new LinkedHashMap<>();
    for (Format format : Formats.of(calculation)) {
      content.put(
          format.mediaType(),
          format.equals(Format.JSON) ? Tree.of("schema", answer()) : Responses.text());
    }
    return content;
  }

  private Map<String, Object> answer() {
    Map<String, Object> properties =
        Tree.of(
            "calculation",
            Tree.of("type", "string", "enum", List.of(calculation.name())),
            "result",
            result(),
            "picked",
            Tree.of("description", "What `pick` points at in the result"),
            "remarks",
            Tree.of("type", "array", "items", schemas.reference(Remark.class, "")),
            "sources",
            Tree.of("type", "array", "items", schemas.reference(Cited.class, "")),
            "revision",
            Tree.of("type", "integer", "format", "int64"));
    return schemas.add(
        capital + "Answer",
        Tree.of(
            "type",
            "object",
            "additionalProperties",
            false,
            "properties",
            properties,
            "required",
            List.of("calculation", "result", "remarks", "revision")));
  }

  /** The schema of the input. */
  Map<String, Object> input() {
    return schemas.reference(calculation.input(), offered.plugin());
  }

  /** The schema of the result, with the bill that is added to lines of ingredients. */
  Map<String, Object> result() {
    return schemas.result(calculation.result(), offered.plugin());
  }

  private Map<String, Object> examples() {
    Map<String, Object> examples = new LinkedHashMap<>();
    int number = 1;
    for (Record example : calculation.examples()) {
      examples.put("example" + number++, Tree.of("value", example));
    }
    return examples;
  }
}
