package tamis.api.representation;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Describes what is answered, and the problems that may be answered instead. */
final class Responses {
  private static final List<Integer> READING = List.of(400, 404, 405, 406, 414, 422, 429, 431);
  private static final List<Integer> WRITING = List.of(413, 415);
  private static final List<Integer> OURS = List.of(500, 503, 504);
  private static final int FULL = 507;

  private Responses() {}

  /** The answers of a calculation. */
  static Map<String, Object> of(Map<String, Object> content, boolean conditional, boolean body) {
    Map<String, Object> responses = new LinkedHashMap<>();
    responses.put("200", Tree.of("description", "The answer", "content", content));
    if (conditional) {
      responses.put("304", Tree.of("description", "The caller's copy is still right"));
    }
    addProblems(responses, body);
    return responses;
  }

  /** Adds the problems that are not told yet. */
  static void addProblems(Map<String, Object> responses, boolean body) {
    READING.forEach(status -> add(responses, status));
    if (body) {
      WRITING.forEach(status -> add(responses, status));
    }
    OURS.forEach(status -> add(responses, status));
  }

  /** Adds the problem of what keeps documents. */
  static void addFull(Map<String, Object> responses) {
    add(responses, FULL);
  }

  private static void add(Map<String, Object> responses, int status) {
    responses.putIfAbsent(
        Integer.toString(status), Tree.of("$ref", "#/components/responses/" + name(status)));
  }

  private static String name(int status) {
    return Statuses.title(status).replace(" ", "");
  }

  /** Each problem once, for the components of the document. */
  static Map<String, Object> problems(Schemas schemas) {
    Map<String, Object> problems = new LinkedHashMap<>();
    Map<String, Object> problem = schemas.reference(Problem.class, "");
    for (List<Integer> statuses : List.of(READING, WRITING, OURS, List.of(FULL))) {
      for (int status : statuses) {
        problems.put(
            name(status),
            Tree.of(
                "description",
                Statuses.title(status),
                "content",
                Tree.of(Problem.CONTENT_TYPE, Tree.of("schema", problem))));
      }
    }
    return problems;
  }

  static Map<String, Object> text() {
    return Tree.of("schema", Tree.of("type", "string"));
  }
}
