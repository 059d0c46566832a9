package tamis.api.representation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Describes the options of a query. */
final class OptionParameters {
  private static final String PLACE = "#/components/parameters/";

  private OptionParameters() {}

  /** References to the options, with the formats that are given. */
  static List<Object> of(List<String> formats, boolean displays) {
    List<Object> parameters = new ArrayList<>();
    parameters.add(parameter("format", "Form of the answer; goes before `Accept`", words(formats)));
    for (String name : shared().keySet()) {
      if (displays || !name.equals("Units")) {
        parameters.add(Tree.of("$ref", PLACE + name));
      }
    }
    return parameters;
  }

  /** The options that are the same everywhere, for the components of the document. */
  static Map<String, Object> shared() {
    Map<String, Object> shared = new LinkedHashMap<>();
    shared.put(
        "Pick",
        parameter(
            "pick",
            "JSON Pointer (RFC 6901) into the result: the value of a text, the list of a CSV",
            Tree.of("type", "string", "example", "/lines/0/grams")));
    shared.put(
        "Decimal",
        parameter(
            "decimal",
            "Decimal mark of numbers in the query, in text and in CSV, which is then separated by ;",
            words(List.of("comma", "point"))));
    shared.put(
        "Errors",
        parameter(
            "errors",
            "With text, faults are answered by 200 and a short text that begins with !",
            words(List.of("text", "problem"))));
    shared.put("Bom", parameter("bom", "CSV begins with a byte order mark", yesOrNo()));
    shared.put(
        "Partial", parameter("partial", "Figures that are known in part are given", yesOrNo()));
    shared.put("Sources", parameter("sources", "Sources are told unless it is no", yesOrNo()));
    shared.put(
        "Units",
        parameter(
            "units", "Whose units are displayed beside figures", words(List.of("us", "metric"))));
    shared.put(
        "K",
        parameter(
            "k", "Read by nobody: another value makes another address", Tree.of("type", "string")));
    return shared;
  }

  private static Map<String, Object> parameter(
      String name, String description, Map<String, Object> schema) {
    return Tree.of(
        "name",
        name,
        "in",
        "query",
        "required",
        false,
        "description",
        description,
        "schema",
        schema);
  }

  private static Map<String, Object> words(List<String> words) {
    return Tree.of("type", "string", "enum", words);
  }

  private static Map<String, Object> yesOrNo() {
    return words(List.of("yes", "no"));
  }
}
