package tamis.api.representation;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** The paths that the annotations of handlers describe, put right where their reader is not. */
final class FixedPaths {
  /** Where the annotation processor leaves what it read from the handlers. */
  private static final String ANNOTATED = "/openapi-plugin/openapi-default.json";

  private static final JsonLimits OUR_OWN = new JsonLimits(100, 40);
  private static final Set<String> VERBS = Set.of("get", "post", "put", "delete", "patch");
  private static final List<String> KEEPING =
      List.of("/v1/formulas", "/v1/ingredients", "/v1/prices", "/v1/trials");
  private static final Set<String> NUMBERS = Set.of("integer", "number");

  private FixedPaths() {}

  /** The document of the annotation processor; empty if no handler is annotated. */
  @SuppressWarnings("unchecked") // objects of a tree have names of text
  static Map<String, Object> annotated() {
    try (@Nullable InputStream file = FixedPaths.class.getResourceAsStream(ANNOTATED)) {
      if (file == null) {
        return new LinkedHashMap<>();
      }
      @Nullable Object tree = StrictJson.tree(file.readAllBytes(), OUR_OWN);
      return tree == null ? new LinkedHashMap<>() : (Map<String, Object>) tree;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  /** Its paths; each operation tells the problems, and no security scheme that is not there. */
  @SuppressWarnings("unchecked") // objects of a tree have names of text
  static Map<String, Object> of(Map<String, Object> annotated) {
    Map<String, Object> paths = new LinkedHashMap<>(Tree.in(annotated, "paths"));
    paths.forEach(
        (path, all) -> {
          boolean keeps = KEEPING.stream().anyMatch(path::startsWith);
          Map<String, Object> operations = (Map<String, Object>) all;
          operations.keySet().retainAll(VERBS);
          operations.forEach(
              (verb, operation) -> complete(verb, (Map<String, Object>) operation, keeps));
        });
    return paths;
  }

  private static void complete(String verb, Map<String, Object> operation, boolean keeps) {
    operation.remove("security");
    operation.putIfAbsent("description", operation.getOrDefault("summary", verb));
    tidy(operation);
    Map<String, Object> responses = Tree.in(operation, "responses");
    Responses.addProblems(responses, verb.equals("post") || verb.equals("put"));
    if (keeps && !verb.equals("get")) {
      Responses.addFull(responses);
    }
  }

  /** Examples of numbers are told as numbers; what is false by itself is not told. */
  @SuppressWarnings("unchecked") // objects of a tree have names of text
  private static void tidy(@Nullable Object value) {
    if (value instanceof List<?> list) {
      list.forEach(FixedPaths::tidy);
    } else if (value instanceof Map<?, ?> map) {
      map.remove("allowEmptyValue", false);
      map.remove("deprecated", false);
      @Nullable Object example = map.get("example");
      if (NUMBERS.contains(String.valueOf(map.get("type")))
          && example instanceof String text
          && Figures.isNumber(text)) {
        ((Map<String, Object>) map).put("example", new BigDecimal(text));
      }
      map.values().forEach(FixedPaths::tidy);
    }
  }
}
