package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;

/** What a record looks like from outside: its components with their forms and descriptions. */
public final class Shape {
  private static final ClassValue<Shape> SHAPES =
      new ClassValue<>() {
        @Override
        protected Shape computeValue(Class<?> type) {
          return new Shape(type.asSubclass(Record.class));
        }
      };

  private final Class<? extends Record> type;
  private final Map<String, Component> components;
  private final List<Component> inOrder;
  private final Map<String, Integer> places = new HashMap<>();
  private final List<Alternatives> alternatives;
  private final MethodHandle constructor;

  private Shape(Class<? extends Record> type) {
    this.type = type;
    Map<String, Component> found = new LinkedHashMap<>();
    RecordComponent[] parts = type.getRecordComponents();
    for (RecordComponent part : parts) {
      Component component = Component.of(type, part);
      found.put(component.name(), component);
    }
    this.components = Collections.unmodifiableMap(found);
    this.inOrder = List.copyOf(found.values());
    for (int i = 0; i < inOrder.size(); i++) {
      places.put(inOrder.get(i).name(), i);
    }
    this.alternatives =
        Arrays.stream(type.getAnnotationsByType(ExactlyOne.class)).map(Alternatives::of).toList();
    this.constructor = canonical(type, parts);
  }

  /**
   * @throws IllegalArgumentException if the record or a component cannot be described
   */
  public static Shape of(Class<? extends Record> type) {
    return SHAPES.get(type);
  }

  public Class<? extends Record> type() {
    return type;
  }

  /** All components in the order of the record, by name. */
  public Map<String, Component> components() {
    return components;
  }

  /** The rules by which exactly one of several is given. */
  public List<ExactlyOne> rules() {
    return alternatives.stream().map(Alternatives::rule).toList();
  }

  List<Alternatives> alternatives() {
    return alternatives;
  }

  /**
   * Makes the record; absent components are null.
   *
   * @throws Refusal from the record's own checks
   */
  Record make(@Nullable Object[] values) {
    try {
      Object made = (Object) constructor.invokeExact(values);
      return (Record) made;
    } catch (RuntimeException | Error thrown) {
      throw thrown;
    } catch (Throwable impossible) {
      throw new IllegalStateException("a record constructor threw a checked exception", impossible);
    }
  }

  private static MethodHandle canonical(Class<? extends Record> type, RecordComponent[] parts) {
    Class<?>[] types = Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
    try {
      Constructor<?> constructor = type.getConstructor(types);
      return MethodHandles.publicLookup()
          .unreflectConstructor(constructor)
          .asSpreader(Object[].class, types.length)
          .asType(MethodType.methodType(Object.class, Object[].class));
    } catch (NoSuchMethodException | IllegalAccessException hidden) {
      throw new IllegalArgumentException(type + " must be public, as its constructor", hidden);
    }
  }

  /** All components in the order of the record. */
  public List<Component> inOrder() {
    return inOrder;
  }

  /** Where in that order a name stands, or null if no component has it. */
  @Nullable Integer place(String name) {
    return places.get(name);
  }

  /** The component at the end of dotted record names, or null. */
  public @Nullable Component component(String name) {
    return components.get(name);
  }

  /** Names of components that satisfy nothing but themselves, for messages. */
  public String names() {
    return components.keySet().stream().collect(Collectors.joining(", "));
  }

  /** The component marked as headline, with the names that lead to it; empty if there is none. */
  public List<Component> headline() {
    return headline(new ArrayList<>());
  }

  /** The component marked as table, or null. */
  public @Nullable Component table() {
    for (Component component : components.values()) {
      if (component.described().table()) {
        return component;
      }
    }
    return null;
  }

  private List<Component> headline(List<Class<?>> seen) {
    if (seen.contains(type)) {
      return List.of();
    }
    seen.add(type);
    for (Component component : components.values()) {
      if (component.described().headline()) {
        return List.of(component);
      }
      if (component.form() instanceof Form.Nested nested) {
        List<Component> inner = nested.shape().headline(seen);
        if (!inner.isEmpty()) {
          List<Component> path = new ArrayList<>(List.of(component));
          path.addAll(inner);
          return path;
        }
      }
    }
    return List.of();
  }
}
