package tamis.api.representation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Component;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/** Describes records as schemas of OpenAPI 3.0.3, each under a name of its own. */
final class Schemas {
  private static final String PLACE = "#/components/schemas/";

  private final SchemaNames names = new SchemaNames();
  private final Map<String, Object> schemas = new LinkedHashMap<>();

  /** All schemas so far, by name. */
  Map<String, Object> all() {
    return schemas;
  }

  /** Describes a document that fixed paths refer to by its simple name. */
  void document(Class<? extends Record> type) {
    if (names.known(type) == null) {
      describe(type, names.give(type, type.getSimpleName()), "");
    }
  }

  /** Refers to the schema of a record, described now if it was not. */
  Map<String, Object> reference(Class<? extends Record> type, String plugin) {
    @Nullable String known = names.known(type);
    if (known == null) {
      known = names.of(type, plugin);
      describe(type, known, plugin);
    }
    return Tree.of("$ref", PLACE + known);
  }

  /** Refers to the schema of a result, which may get a bill that its record does not hold. */
  Map<String, Object> result(Class<? extends Record> type, String plugin) {
    Map<String, Object> reference = reference(type, plugin);
    if (Bill.isAddedTo(Shape.of(type))) {
      String name = String.valueOf(reference.get("$ref")).substring(PLACE.length());
      Tree.in(Tree.in(schemas, name), "properties").put(Bill.NAME, Bill.schema());
    }
    return reference;
  }

  /** A schema that no record stands for. */
  Map<String, Object> add(String name, Map<String, Object> schema) {
    String free = names.free(name);
    schemas.put(free, schema);
    return Tree.of("$ref", PLACE + free);
  }

  private void describe(Class<? extends Record> type, String name, String plugin) {
    schemas.put(name, Map.of()); // holds the place: a record may hold others of its own kind
    schemas.put(name, object(Shape.of(type), plugin));
  }

  private Map<String, Object> object(Shape shape, String plugin) {
    Map<String, Object> properties = new LinkedHashMap<>();
    List<String> required = new ArrayList<>();
    shape
        .components()
        .forEach(
            (name, component) -> {
              properties.put(name, of(component, plugin));
              if (component.required()) {
                required.add(name);
              }
            });
    Map<String, Object> schema =
        Tree.of(
            "type",
            "object",
            "description",
            SchemaWords.ofReferences(shape, properties),
            "additionalProperties",
            false,
            "properties",
            properties);
    if (!required.isEmpty()) {
      schema.put("required", required);
    }
    List<ExactlyOne> rules = shape.rules();
    if (rules.size() == 1) {
      schema.put("oneOf", alternatives(rules.get(0)));
    } else if (rules.size() > 1) {
      schema.put("allOf", rules.stream().map(r -> Tree.of("oneOf", alternatives(r))).toList());
    }
    return schema;
  }

  private static List<Object> alternatives(ExactlyOne rule) {
    return Arrays.stream(rule.value())
        .map(group -> (Object) Tree.of("required", Arrays.asList(group.split("\\+", -1))))
        .toList();
  }

  /** The schema of one component, with its meaning and bounds. */
  Map<String, Object> of(Component component, String plugin) {
    Described described = component.described();
    Map<String, Object> schema = of(component.form(), plugin);
    if (schema.containsKey("$ref")) {
      // Beside a reference 3.0 reads nothing; wrapped, generators and validators take a union or
      // an object with alternatives for something else. Its meaning is told by the object around.
      return schema;
    }
    schema.put("description", SchemaWords.description(component));
    SchemaWords.bounds(component, schema);
    @Nullable Object example = SchemaWords.example(component.form(), described.example());
    if (example != null) {
      schema.put("example", example);
    }
    if (described.nullAllowed()) {
      schema.put("nullable", true);
    }
    return schema;
  }

  /** The schema of a form; a map that may be added to. */
  Map<String, Object> of(Form form, String plugin) {
    if (form instanceof Form.Numeric number) {
      return number(number);
    }
    if (form instanceof Form.Flag) {
      return Tree.of("type", "boolean");
    }
    if (form instanceof Form.Choice choice) {
      return named(
          choice.type(), plugin, () -> Tree.of("type", "string", "enum", Form.allowed(form)));
    }
    if (form instanceof Form.Text text && text.ofNumber() != null) {
      return named(text.type(), plugin, () -> orText(Tree.of("type", "number")));
    }
    if (form instanceof Form.Nested nested) {
      return reference(nested.type(), plugin);
    }
    if (form instanceof Form.Either either) {
      return named(either.type(), plugin, () -> orText(reference(either.object(), plugin)));
    }
    if (form instanceof Form.Listed listed) {
      return Tree.of("type", "array", "items", of(listed.entry(), plugin));
    }
    if (form instanceof Form.Free) {
      return Tree.of();
    }
    return form instanceof Form.Mapped map ? map(map, plugin) : Tree.of("type", "string");
  }

  private static Map<String, Object> number(Form.Numeric number) {
    if (!number.whole()) {
      return Tree.of("type", "number");
    }
    boolean wide = number.type() == long.class || number.type() == Long.class;
    return Tree.of("type", "integer", "format", wide ? "int64" : "int32");
  }

  private static Map<String, Object> orText(Map<String, Object> other) {
    return Tree.of("oneOf", List.of(Tree.of("type", "string"), other));
  }

  /** A schema under the name of its class, so that generators make one type of it. */
  private Map<String, Object> named(
      Class<?> type, String plugin, Supplier<Map<String, Object>> schema) {
    @Nullable String known = names.known(type);
    if (known == null) {
      known = names.of(type, plugin);
      schemas.put(known, Map.of()); // holds the place: what it holds may hold others of its kind
      schemas.put(known, schema.get());
    }
    return Tree.of("$ref", PLACE + known);
  }

  private Map<String, Object> map(Form.Mapped map, String plugin) {
    Map<String, Object> entry = of(map.entry(), plugin);
    if (!(map.name() instanceof Form.Choice)) {
      return Tree.of("type", "object", "additionalProperties", entry);
    }
    Map<String, Object> properties = new LinkedHashMap<>();
    Form.allowed(map.name()).forEach(word -> properties.put(word, entry));
    return Tree.of("type", "object", "additionalProperties", false, "properties", properties);
  }
}
