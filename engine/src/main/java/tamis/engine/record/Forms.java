package tamis.engine.record;

import java.lang.invoke.MethodHandle;
import java.lang.invoke.MethodHandles;
import java.lang.invoke.MethodType;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Finds the form of a component from its Java type. */
final class Forms {
  private static final Set<Class<?>> WHOLE =
      Set.of(int.class, long.class, Integer.class, Long.class);
  private static final Set<Class<?>> FRACTIONAL =
      Set.of(double.class, Double.class, BigDecimal.class);

  private Forms() {}

  static Form of(Type type) {
    if (type instanceof ParameterizedType generic) {
      Class<?> raw = (Class<?>) generic.getRawType();
      Type[] arguments = generic.getActualTypeArguments();
      if (raw == List.class) {
        return new Form.Listed(of(arguments[0]));
      }
      if (raw == Map.class) {
        return new Form.Mapped(of(arguments[0]), of(arguments[1]));
      }
    }
    if (type instanceof Class<?> plain) {
      return ofClass(plain);
    }
    throw new IllegalArgumentException(type + " is no type that a described record may hold");
  }

  private static Form ofClass(Class<?> type) {
    if (type == Object.class) {
      return new Form.Free();
    }
    if (WHOLE.contains(type)) {
      return new Form.Numeric(type, true);
    }
    if (FRACTIONAL.contains(type)) {
      return new Form.Numeric(type, false);
    }
    if (type == boolean.class || type == Boolean.class) {
      return new Form.Flag();
    }
    if (type == String.class) {
      return new Form.Words();
    }
    if (type.isEnum()) {
      return new Form.Choice(type, words(type));
    }
    @Nullable MethodHandle parse = factory(type, "parse", String.class);
    if (parse == null) {
      parse = factory(type, "parse", CharSequence.class);
    }
    if (TextOrObject.class.isAssignableFrom(type) && parse != null) {
      Class<? extends Record> object = objectOf(type);
      MethodHandle of = factory(type, "of", object);
      if (of == null) {
        throw new IllegalArgumentException(type + " has no of(" + object.getSimpleName() + ")");
      }
      return new Form.Either(type, parse, object, of);
    }
    if (parse != null) {
      return new Form.Text(type, parse, factory(type, "ofNumber", double.class));
    }
    if (type.isRecord()) {
      return new Form.Nested(type.asSubclass(Record.class));
    }
    throw new IllegalArgumentException(type + " is no type that a described record may hold");
  }

  private static Class<? extends Record> objectOf(Class<?> type) {
    for (Type implemented : type.getGenericInterfaces()) {
      if (implemented instanceof ParameterizedType generic
          && generic.getRawType() == TextOrObject.class) {
        return ((Class<?>) generic.getActualTypeArguments()[0]).asSubclass(Record.class);
      }
    }
    throw new IllegalArgumentException(type + " does not say what its object form is");
  }

  private static Map<String, Object> words(Class<?> type) {
    Map<String, Object> words = new LinkedHashMap<>();
    for (Object constant : type.getEnumConstants()) {
      String name = ((Enum<?>) constant).name();
      String text = constant.toString();
      String kebab = name.toLowerCase(Locale.ROOT).replace('_', '-');
      words.put(text.equals(name) ? kebab : text, constant);
    }
    return Collections.unmodifiableMap(words);
  }

  private static @Nullable MethodHandle factory(Class<?> type, String name, Class<?> argument) {
    try {
      Method method = type.getMethod(name, argument);
      if (!Modifier.isStatic(method.getModifiers()) || method.getReturnType() != type) {
        return null;
      }
      return MethodHandles.publicLookup()
          .unreflect(method)
          .asType(
              MethodType.methodType(
                  Object.class, argument == double.class ? double.class : Object.class));
    } catch (NoSuchMethodException none) {
      return null;
    } catch (IllegalAccessException hidden) {
      throw new IllegalArgumentException(type + "." + name + " must be public", hidden);
    }
  }
}
