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

/**
 * One reading: where it stands, and the faults gathered so far. A null value means that faults were
 * found.
 */
record Reading(RecordReader reader, Place at, Faults faults) {
  /** Stands where nothing was given; null is something that was. */
  private static final Object LEFT_OUT = new Object();

  @Nullable Object value(Form form, @Nullable Component component, @Nullable Object tree) {
    if (tree == null) {
      return fault(
          FaultCode.NULL, at.toString(), "null", Words.of(form), "null stands for nothing here");
    }
    @Nullable Object value = formed(form, component, tree);
    if (value != null && component != null) {
      value = Sizes.bounded(component, value, tree, at, faults);
    }
    if (value instanceof Reference reference) {
      @Nullable Object checked =
          at.gather(
              faults,
              () -> {
                reader.references().check(reference);
                return reference;
              });
      return checked;
    }
    return value;
  }

  private @Nullable Object formed(Form form, @Nullable Component component, Object tree) {
    if (form instanceof Form.Nested nested) {
      return tree instanceof Map<?, ?> map ? object(nested.shape(), map) : wrong(form, tree);
    }
    if (form instanceof Form.Listed listed) {
      return tree instanceof List<?> list ? list(listed, component, list) : wrong(form, tree);
    }
    if (form instanceof Form.Mapped mapped) {
      return tree instanceof Map<?, ?> map ? map(mapped, component, map) : wrong(form, tree);
    }
    if (form instanceof Form.Free) {
      return tree;
    }
    if (form instanceof Form.Either either) {
      return either(either, tree);
    }
    return Scalars.read(reader, form, tree, at, faults);
  }

  private @Nullable Object either(Form.Either either, Object tree) {
    if (tree instanceof String text) {
      return at.gather(faults, () -> Calls.parse(either.parse(), text));
    }
    if (tree instanceof Map<?, ?> map) {
      @Nullable Object object = object(Shape.of(either.object()), map);
      return object == null ? null : at.gather(faults, () -> Calls.of(either.ofObject(), object));
    }
    return wrong(either, tree);
  }

  private @Nullable Object object(Shape shape, Map<?, ?> given) {
    int before = faults.size();
    @Nullable Object[] values = placed(shape, given);
    List<Component> components = shape.inOrder();
    for (int i = 0; i < values.length; i++) {
      values[i] = component(components.get(i), values[i]);
    }
    for (Alternatives alternatives : shape.alternatives()) {
      alternatives.check(given, at, faults);
    }
    return faults.size() > before ? null : at.gather(faults, () -> shape.make(values));
  }

  /** What is given, each at the place of its component. */
  private @Nullable Object[] placed(Shape shape, Map<?, ?> given) {
    @Nullable Object[] trees = new @Nullable Object[shape.inOrder().size()];
    Arrays.fill(trees, LEFT_OUT);
    for (Map.Entry<?, ?> entry : given.entrySet()) {
      String name = String.valueOf(entry.getKey());
      @Nullable Integer place = shape.place(name);
      if (place == null) {
        unknown(name, shape);
      } else {
        trees[place] = entry.getValue();
      }
    }
    return trees;
  }

  private @Nullable Object component(Component component, @Nullable Object tree) {
    String name = component.name();
    if (tree == LEFT_OUT || (tree == null && component.nullAllowed())) {
      if (component.required()) {
        String form = Words.of(component.form());
        String said = "`" + name + "` is missing: " + component.described().value();
        fault(FaultCode.MISSING, at.of(name), null, form, said);
      }
      return component.absent();
    }
    return within(name, component.form(), component, tree);
  }

  /** The value that stands under a name or number here. */
  private @Nullable Object within(
      Object step, Form form, @Nullable Component component, @Nullable Object tree) {
    at.in(step);
    @Nullable Object value = value(form, component, tree);
    at.out();
    return value;
  }

  private @Nullable Object list(Form.Listed form, @Nullable Component component, List<?> given) {
    if (component != null && !Sizes.counted(reader.limits(), component, given.size(), at, faults)) {
      return null;
    }
    int before = faults.size();
    List<Object> values = new ArrayList<>(given.size());
    for (int i = 0; i < given.size(); i++) {
      @Nullable Object value = within(i, form.entry(), null, given.get(i));
      if (value != null) {
        values.add(value);
      }
    }
    return faults.size() > before ? null : List.copyOf(values);
  }

  private @Nullable Object map(Form.Mapped form, @Nullable Component component, Map<?, ?> given) {
    if (component != null && !Sizes.counted(reader.limits(), component, given.size(), at, faults)) {
      return null;
    }
    int before = faults.size();
    Map<Object, Object> values = new LinkedHashMap<>();
    given.forEach(
        (key, tree) -> {
          String name = String.valueOf(key);
          @Nullable Object read = named(form.name(), name);
          @Nullable Object value = within(name, form.entry(), null, tree);
          if (read != null && value != null) {
            values.put(read, value);
          }
        });
    return faults.size() > before ? null : Collections.unmodifiableMap(values);
  }

  private @Nullable Object named(Form form, String name) {
    at.in(name);
    @Nullable Object read = Scalars.read(reader, form, name, at, faults);
    at.out();
    return read;
  }

  private void unknown(String name, Shape shape) {
    String near = Nearest.suggestion(name, shape.components().keySet());
    String said = "`" + name + "` is not known here" + near;
    fault(FaultCode.UNKNOWN_FIELD, at.of(name), name, shape.names(), said);
  }

  private @Nullable Object wrong(Form form, Object tree) {
    String allowed = Words.of(form);
    String given = Words.given(tree);
    return fault(
        FaultCode.WRONG_TYPE,
        at.toString(),
        given,
        allowed,
        "must be " + allowed + ", was " + given);
  }

  private @Nullable Object fault(
      FaultCode code, String pointer, @Nullable String given, String allowed, String message) {
    faults.add(new Fault(code, pointer, given, allowed, message));
    return null;
  }
}
