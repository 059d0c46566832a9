package tamis.engine.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** One reading with the faults gathered so far. A null value means that faults were found. */
record Reading(RecordReader reader, Faults faults) {
  /** Stands where nothing was given; null is something that was. */
  private static final Object LEFT_OUT = new Object();

  @Nullable Object value(
      Form form, @Nullable Component component, @Nullable Object tree, String at) {
    if (tree == null) {
      return fault(FaultCode.NULL, at, "null", Words.of(form), "null stands for nothing here");
    }
    @Nullable Object value = formed(form, component, tree, at);
    if (value != null && component != null) {
      value = Sizes.bounded(component, value, tree, at, faults);
    }
    if (value instanceof Reference reference) {
      @Nullable Object checked =
          faults.gather(
              at,
              () -> {
                reader.references().check(reference);
                return reference;
              });
      return checked;
    }
    return value;
  }

  private @Nullable Object formed(
      Form form, @Nullable Component component, Object tree, String at) {
    if (form instanceof Form.Nested nested) {
      return tree instanceof Map<?, ?> map
          ? object(nested.shape(), map, at)
          : wrong(form, tree, at);
    }
    if (form instanceof Form.Listed listed) {
      return tree instanceof List<?> list
          ? list(listed, component, list, at)
          : wrong(form, tree, at);
    }
    if (form instanceof Form.Mapped mapped) {
      return tree instanceof Map<?, ?> map
          ? map(mapped, component, map, at)
          : wrong(form, tree, at);
    }
    if (form instanceof Form.Free) {
      return tree;
    }
    if (form instanceof Form.Either either) {
      return either(either, tree, at);
    }
    return Scalars.read(this.reader, form, tree, at, faults);
  }

  private @Nullable Object either(Form.Either either, Object tree, String at) {
    if (tree instanceof String text) {
      return faults.gather(at, () -> Calls.parse(either.parse(), text));
    }
    if (tree instanceof Map<?, ?> map) {
      @Nullable Object object = object(Shape.of(either.object()), map, at);
      return object == null ? null : faults.gather(at, () -> Calls.of(either.ofObject(), object));
    }
    return wrong(either, tree, at);
  }

  private @Nullable Object object(Shape shape, Map<?, ?> given, String at) {
    int before = faults.size();
    @Nullable Object[] values = placed(shape, given, at);
    for (int i = 0; i < values.length; i++) {
      values[i] = component(shape.inOrder().get(i), values[i], at);
    }
    for (Alternatives alternatives : shape.alternatives()) {
      alternatives.check(given, at, faults);
    }
    return faults.size() > before ? null : faults.gather(at, () -> shape.make(values));
  }

  /** What is given, each at the place of its component. */
  private @Nullable Object[] placed(Shape shape, Map<?, ?> given, String at) {
    @Nullable Object[] trees = new @Nullable Object[shape.inOrder().size()];
    Arrays.fill(trees, LEFT_OUT);
    for (Map.Entry<?, ?> entry : given.entrySet()) {
      String name = String.valueOf(entry.getKey());
      @Nullable Integer place = shape.place(name);
      if (place == null) {
        unknown(name, shape, at);
      } else {
        trees[place] = entry.getValue();
      }
    }
    return trees;
  }

  private @Nullable Object component(Component component, @Nullable Object tree, String at) {
    String name = component.name();
    if (tree == LEFT_OUT || (tree == null && component.described().nullAllowed())) {
      if (component.required()) {
        String form = Words.of(component.form());
        fault(
            FaultCode.MISSING,
            at + "/" + RecordReader.escaped(name),
            null,
            form,
            "`" + name + "` is missing: " + component.described().value());
      }
      return component.absent();
    }
    return value(component.form(), component, tree, at + "/" + RecordReader.escaped(name));
  }

  private @Nullable Object list(
      Form.Listed form, @Nullable Component component, List<?> given, String at) {
    if (component != null && !Sizes.counted(reader.limits(), component, given.size(), at, faults)) {
      return null;
    }
    int before = faults.size();
    List<Object> values = new ArrayList<>(given.size());
    for (int i = 0; i < given.size(); i++) {
      @Nullable Object value = value(form.entry(), null, given.get(i), at + "/" + i);
      if (value != null) {
        values.add(value);
      }
    }
    return faults.size() > before ? null : List.copyOf(values);
  }

  private @Nullable Object map(
      Form.Mapped form, @Nullable Component component, Map<?, ?> given, String at) {
    if (component != null && !Sizes.counted(reader.limits(), component, given.size(), at, faults)) {
      return null;
    }
    int before = faults.size();
    Map<Object, Object> values = new LinkedHashMap<>();
    given.forEach(
        (name, tree) -> {
          String place = at + "/" + RecordReader.escaped(String.valueOf(name));
          @Nullable Object key =
              Scalars.read(reader, form.name(), String.valueOf(name), place, faults);
          @Nullable Object value = value(form.entry(), null, tree, place);
          if (key != null && value != null) {
            values.put(key, value);
          }
        });
    return faults.size() > before ? null : Collections.unmodifiableMap(values);
  }

  private void unknown(String name, Shape shape, String at) {
    String near = Nearest.suggestion(name, shape.components().keySet());
    fault(
        FaultCode.UNKNOWN_FIELD,
        at + "/" + RecordReader.escaped(name),
        name,
        shape.names(),
        "`" + name + "` is not known here" + near);
  }

  private @Nullable Object wrong(Form form, Object tree, String at) {
    String allowed = Words.of(form);
    return fault(
        FaultCode.WRONG_TYPE,
        at,
        Words.given(tree),
        allowed,
        "must be " + allowed + ", was " + Words.given(tree));
  }

  private @Nullable Object fault(
      FaultCode code, String at, @Nullable String given, String allowed, String message) {
    faults.add(new Fault(code, at, given, allowed, message));
    return null;
  }
}
