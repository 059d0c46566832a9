package tamis.api.representation;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;

/** Builds nested maps and lists from dotted names such as {@code to.pans.0.pan.shape}. */
final class QueryTree {
  private static final int DEEPEST = 32;

  private final Faults faults;
  private final Node root = new Node();

  QueryTree(Faults faults) {
    this.faults = faults;
  }

  private static final class Node {
    private final List<String> values = new ArrayList<>();
    private final Map<String, Node> parts = new LinkedHashMap<>();
  }

  void add(String name, List<String> values) {
    String[] steps = name.split("\\.", -1);
    String at = "/" + RecordReader.escaped(name);
    if (steps.length > DEEPEST) {
      faults.add(FaultCode.TOO_DEEP, at, "`" + name + "` nests deeper than " + DEEPEST);
      return;
    }
    if (Arrays.asList(steps).contains("")) {
      faults.add(
          FaultCode.UNKNOWN_FIELD, at, "`" + name + "` has an empty name before or after a dot");
      return;
    }
    Node node = root;
    for (String step : steps) {
      node = node.parts.computeIfAbsent(step, s -> new Node());
    }
    node.values.addAll(values);
  }

  /** The tree, as the components of {@code input} are read. */
  Map<String, Object> assembled(Class<? extends Record> input) {
    return map(root, new Form.Nested(input), "");
  }

  private Object value(Node node, @Nullable Form form, String at) {
    if (node.parts.isEmpty()) {
      return scalar(node, form, at);
    }
    if (!node.values.isEmpty()) {
      faults.add(
          FaultCode.DUPLICATE_NAME,
          at,
          "`" + at.substring(at.lastIndexOf('/') + 1) + "` is given as a value and by its parts");
    }
    boolean list = form instanceof Form.Listed || (form == null && numbered(node));
    return list ? list(node, form, at) : map(node, form, at);
  }

  private Object scalar(Node node, @Nullable Form form, String at) {
    if (form instanceof Form.Listed listed && isSingle(listed.entry())) {
      return List.copyOf(node.values);
    }
    if (node.values.size() > 1) {
      faults.add(
          new Fault(
              FaultCode.DUPLICATE_NAME,
              at,
              String.join(", ", node.values),
              "one value",
              "`"
                  + at.substring(at.lastIndexOf('/') + 1)
                  + "` is given "
                  + node.values.size()
                  + " times"));
    }
    return node.values.get(0);
  }

  private List<Object> list(Node node, @Nullable Form form, String at) {
    @Nullable Form entry = form instanceof Form.Listed listed ? listed.entry() : null;
    List<Object> entries = new ArrayList<>();
    for (int i = 0; i < node.parts.size(); i++) {
      @Nullable Node part = node.parts.get(Integer.toString(i));
      if (part == null) {
        faults.add(gap(node, i, at));
        return List.copyOf(map(node, null, at).values());
      }
      entries.add(value(part, entry, at + "/" + i));
    }
    return entries;
  }

  private static Fault gap(Node node, int missing, String at) {
    return new Fault(
        FaultCode.INCONSISTENT,
        at,
        String.join(", ", node.parts.keySet()),
        "numbers from 0 without gaps",
        "entries are numbered from 0 without gaps; " + missing + " is missing");
  }

  private Map<String, Object> map(Node node, @Nullable Form form, String at) {
    Map<String, Object> map = new LinkedHashMap<>();
    node.parts.forEach(
        (name, part) ->
            map.put(name, value(part, part(form, name), at + "/" + RecordReader.escaped(name))));
    return map;
  }

  private static @Nullable Form part(@Nullable Form form, String name) {
    if (form instanceof Form.Nested nested) {
      return part(nested.shape(), name);
    }
    if (form instanceof Form.Either either) {
      return part(Shape.of(either.object()), name);
    }
    return form instanceof Form.Mapped mapped ? mapped.entry() : null;
  }

  private static @Nullable Form part(Shape shape, String name) {
    @Nullable Component component = shape.component(name);
    return component == null ? null : component.form();
  }

  /** Whether a value of this form is one text, so that repeating a name makes a list. */
  private static boolean isSingle(Form form) {
    return !(form instanceof Form.Nested
        || form instanceof Form.Listed
        || form instanceof Form.Mapped);
  }

  private static boolean numbered(Node node) {
    return node.parts.keySet().stream().allMatch(name -> name.matches("0|[1-9][0-9]{0,5}"));
  }
}
