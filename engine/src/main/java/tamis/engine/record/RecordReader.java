package tamis.engine.record;

import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;

/**
 * Reads a described record from plain values (maps, lists, texts, numbers, booleans) as a JSON
 * body, a query or a program gives them. Every fault is told with its place; nothing is skipped,
 * guessed or filled in.
 *
 * @param textual numbers and flags may come as text, as they do in a query
 * @param decimalComma a comma between digits of a number or quantity is its decimal mark
 */
public record RecordReader(
    References references, Limits limits, boolean textual, boolean decimalComma) {

  /** A reader of bodies. */
  public RecordReader(References references, Limits limits) {
    this(references, limits, false, false);
  }

  /**
   * @throws Refusal with all faults
   */
  public <T extends Record> T read(Class<T> type, @Nullable Object tree) {
    Reading reading = new Reading(this, new Faults());
    @Nullable Object value = reading.value(new Form.Nested(type), null, tree, "");
    reading.faults().refuseIfAny();
    return type.cast(Objects.requireNonNull(value));
  }

  /** Escapes a name for use in a JSON Pointer. */
  public static String escaped(String name) {
    boolean plain = name.indexOf('~') < 0 && name.indexOf('/') < 0;
    return plain ? name : name.replace("~", "~0").replace("/", "~1");
  }

  /** One reading with the faults gathered so far. A null value means that faults were found. */
  private record Reading(RecordReader reader, Faults faults) {

    @Nullable Object value(
        Form form, @Nullable Component component, @Nullable Object tree, String at) {
      if (tree == null) {
        return fault(FaultCode.NULL, at, "null", Words.of(form), "null stands for nothing here");
      }
      @Nullable Object value = formed(form, component, tree, at);
      if (value != null && component != null) {
        value = bounded(component, value, tree, at);
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
      unknown(shape, given, at);
      @Nullable Object[] values = new @Nullable Object[shape.components().size()];
      int index = 0;
      for (Component component : shape.components().values()) {
        values[index++] = component(component, given, at);
      }
      for (Alternatives alternatives : shape.alternatives()) {
        alternatives.check(given, at, faults);
      }
      return faults.size() > before ? null : faults.gather(at, () -> shape.make(values));
    }

    private @Nullable Object component(Component component, Map<?, ?> given, String at) {
      String name = component.name();
      @Nullable Object tree = given.get(name);
      if (tree == null && (component.described().nullAllowed() || !given.containsKey(name))) {
        if (component.required()) {
          String form = Words.of(component.form());
          fault(
              FaultCode.MISSING,
              at + "/" + escaped(name),
              null,
              form,
              "`" + name + "` is missing: " + component.described().value());
        }
        return component.absent();
      }
      return value(component.form(), component, tree, at + "/" + escaped(name));
    }

    private @Nullable Object list(
        Form.Listed form, @Nullable Component component, List<?> given, String at) {
      if (component != null && !counted(component, given.size(), at)) {
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

    private boolean counted(Component component, int count, String at) {
      Described described = component.described();
      int most = Math.min(described.most(), reader.limits().of(described.limit()));
      if (count > most) {
        fault(
            FaultCode.TOO_MANY,
            at,
            count + " entries",
            "at most " + most,
            "has " + count + " entries, at most " + most + " are read");
        return false;
      }
      if (count < described.fewest()) {
        fault(
            FaultCode.MISSING,
            at,
            count + " entries",
            "at least " + described.fewest(),
            "needs at least " + described.fewest() + " entries, has " + count);
        return false;
      }
      return true;
    }

    private @Nullable Object map(
        Form.Mapped form, @Nullable Component component, Map<?, ?> given, String at) {
      if (component != null && !counted(component, given.size(), at)) {
        return null;
      }
      int before = faults.size();
      Map<Object, Object> values = new LinkedHashMap<>();
      given.forEach(
          (name, tree) -> {
            String place = at + "/" + escaped(String.valueOf(name));
            @Nullable Object key =
                Scalars.read(reader, form.name(), String.valueOf(name), place, faults);
            @Nullable Object value = value(form.entry(), null, tree, place);
            if (key != null && value != null) {
              values.put(key, value);
            }
          });
      return faults.size() > before ? null : Collections.unmodifiableMap(values);
    }

    private @Nullable Object bounded(Component component, Object value, Object tree, String at) {
      @Nullable String allowed = component.range().violatedBy(value);
      if (allowed != null) {
        return fault(
            FaultCode.OUT_OF_BOUNDS,
            at,
            String.valueOf(tree),
            allowed,
            "`" + component.name() + "` must be " + allowed + ", was " + tree);
      }
      if (value instanceof String text && text.length() > component.described().most()) {
        int most = component.described().most();
        return fault(
            FaultCode.TOO_MANY,
            at,
            text,
            "at most " + most + " characters",
            "`"
                + component.name()
                + "` has "
                + text.length()
                + " characters, at most "
                + most
                + " are read");
      }
      return value;
    }

    private void unknown(Shape shape, Map<?, ?> given, String at) {
      for (Object key : given.keySet()) {
        String name = String.valueOf(key);
        if (shape.component(name) == null) {
          unknown(name, shape, at);
        }
      }
    }

    private void unknown(String name, Shape shape, String at) {
      String near = Nearest.suggestion(name, shape.components().keySet());
      fault(
          FaultCode.UNKNOWN_FIELD,
          at + "/" + escaped(name),
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
}
