package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;

/**
 * The parameters of a query that stand for an input: names joined by dots, entries of lists shown
 * once with the number 0.
 */
final class QueryNames {
  private final Schemas schemas;
  private final String plugin;
  private final List<Object> parameters = new ArrayList<>();

  private QueryNames(Schemas schemas, String plugin) {
    this.schemas = schemas;
    this.plugin = plugin;
  }

  static List<Object> of(Class<? extends Record> input, String plugin, Schemas schemas) {
    QueryNames names = new QueryNames(schemas, plugin);
    names.all(Shape.of(input), "", true, List.of());
    return names.parameters;
  }

  private void all(Shape shape, String prefix, boolean required, List<Class<?>> outer) {
    if (outer.contains(shape.type())) {
      return;
    }
    List<Class<?>> inner = new ArrayList<>(outer);
    inner.add(shape.type());
    for (Component component : shape.components().values()) {
      boolean reserved = prefix.isEmpty() && Options.RESERVED.contains(component.name());
      if (!reserved) {
        String name = prefix + component.name();
        add(name, component, component.form(), required && component.required(), inner);
      }
    }
  }

  private void add(
      String name, Component component, Form form, boolean required, List<Class<?>> outer) {
    if (form instanceof Form.Nested nested) {
      all(nested.shape(), name + ".", required, outer);
    } else if (form instanceof Form.Either either) {
      parameter(name, component, Tree.of("type", "string"), required && !isFlat(either));
      if (isFlat(either)) {
        all(Shape.of(either.object()), name + ".", false, outer);
      }
    } else if (form instanceof Form.Listed listed && !isSingle(listed.entry())) {
      add(name + ".0", component, listed.entry(), required, outer);
    } else if (form instanceof Form.Mapped map) {
      List<String> words = Form.allowed(map.name());
      for (String word : words.isEmpty() ? List.of("NAME") : words) {
        add(name + "." + word, component, map.entry(), false, outer);
      }
    } else {
      parameter(name, component, schema(component, form), required);
    }
  }

  private Map<String, Object> schema(Component component, Form form) {
    if (form instanceof Form.Text) {
      // In a query everything is text; what is a number too would fit twice.
      return Tree.of(
          "type", "string", "example", SchemaWords.example(form, component.described().example()));
    }
    if (!form.equals(component.form())) {
      return schemas.of(form, plugin);
    }
    Map<String, Object> schema = schemas.of(component, plugin);
    schema.remove("description");
    return schema;
  }

  private void parameter(
      String name, Component component, Map<String, Object> schema, boolean required) {
    parameters.add(
        Tree.of(
            "name",
            name,
            "in",
            "query",
            "required",
            required,
            "description",
            SchemaWords.description(component),
            "example",
            schema.remove("example"),
            "schema",
            schema));
  }

  /** An object of single values, such as a pan, can be told part by part; a formula cannot. */
  private static boolean isFlat(Form.Either either) {
    return Shape.of(either.object()).components().values().stream()
        .allMatch(component -> isSingle(component.form()));
  }

  private static boolean isSingle(Form form) {
    return !(form instanceof Form.Nested
        || form instanceof Form.Listed
        || form instanceof Form.Mapped);
  }
}
