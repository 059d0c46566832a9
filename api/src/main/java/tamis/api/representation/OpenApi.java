package tamis.api.representation;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * The description of the whole API as OpenAPI 3.0.3. Fixed paths come from the annotations of the
 * handlers, calculations and all schemas from the described records themselves.
 */
public final class OpenApi {
  private OpenApi() {}

  /**
   * @param offered the calculations
   * @param documents records that fixed paths refer to by their simple names
   * @param version of the program
   */
  public static byte[] bytes(
      List<Offered> offered, List<Class<? extends Record>> documents, String version) {
    return ResultJson.bytes(document(FixedPaths.annotated(), offered, documents, version));
  }

  static Map<String, Object> document(
      Map<String, Object> annotated,
      List<Offered> offered,
      List<Class<? extends Record>> documents,
      String version) {
    Schemas schemas = new Schemas();
    documents.forEach(schemas::document);
    Map<String, Object> responses = Responses.problems(schemas);
    Map<String, Object> paths = FixedPaths.of(annotated);
    offered.forEach(one -> new CalculationPaths(one, schemas).addTo(paths));
    return Tree.of(
        "openapi",
        "3.0.3",
        "info",
        info(version),
        "servers",
        List.of(Tree.of("url", "/", "description", "This server")),
        "security",
        List.of(),
        "tags",
        tags(paths, offered),
        "paths",
        paths,
        "components",
        Tree.of(
            "schemas",
            new TreeMap<>(schemas.all()),
            "parameters",
            OptionParameters.shared(),
            "responses",
            responses));
  }

  private static Map<String, Object> info(String version) {
    return Tree.of(
        "title",
        "Tamis",
        "version",
        version,
        "description",
        "Answers what a formula asks for, weighs, costs and contains.",
        "contact",
        Tree.of("name", "Tamis"),
        "license",
        Tree.of("name", "Apache-2.0", "url", "https://www.apache.org/licenses/LICENSE-2.0.txt"));
  }

  private static final Map<String, String> FIXED_TAGS =
      Map.of(
          "calculations", "What can be computed, and any calculation by its name",
          "docs", "This page",
          "formulas", "Formulas of the shop, with all their revisions",
          "health", "Whether the program runs and is ready, and its numbers for monitoring",
          "ingredients", "Ingredients: those built in, and the shop's own",
          "prices", "What the shop pays, as JSON or as a spreadsheet's CSV",
          "tables", "Tables that answers rest on, each row with its source",
          "trials", "Makings of a formula with what was read, weighed and tasted");

  @SuppressWarnings("unchecked") // objects of a tree have names of text
  private static List<Object> tags(Map<String, Object> paths, List<Offered> offered) {
    Map<String, Object> tags = new TreeMap<>();
    for (Object path : paths.values()) {
      for (Object operation : ((Map<String, Object>) path).values()) {
        Object told = ((Map<String, Object>) operation).getOrDefault("tags", List.of());
        for (Object tag : (List<Object>) told) {
          String name = String.valueOf(tag);
          tags.put(name, Tree.of("name", name, "description", FIXED_TAGS.getOrDefault(name, name)));
        }
      }
    }
    for (Offered one : offered) {
      String name = one.plugin();
      tags.put(name, Tree.of("name", name, "description", "Calculations of the plugin " + name));
    }
    return List.copyOf(tags.values());
  }
}
