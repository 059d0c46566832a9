package tamis.engine.spi;

import static org.assertj.core.api.Assertions.assertThat;

import java.lang.reflect.AnnotatedType;
import java.lang.reflect.Constructor;
import java.lang.reflect.Method;
import java.lang.reflect.Modifier;
import java.lang.reflect.Parameter;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.net.URL;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Fault;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.pan.Pan;
import tamis.engine.price.PriceList;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.record.Limit;
import tamis.engine.record.Reference;
import tamis.engine.record.References;
import tamis.engine.record.TextOrObject;
import tamis.engine.table.Table;
import tamis.engine.thermal.Proximates;
import tamis.engine.trial.Trial;

/**
 * What plugins are compiled against does not change unseen: it is written down in {@code
 * spi-signature.txt}, and a change of it is a change to look at.
 */
class SpiSignatureTest {
  private static final Path FILE = Path.of("src/test/resources/spi-signature.txt");
  private static final List<Class<?>> OF_RECORD =
      List.of(
          Described.class,
          ExactlyOne.class,
          Limit.class,
          Reference.class,
          References.class,
          TextOrObject.class);

  @Test
  void what_plugins_are_compiled_against_is_as_it_is_written_down() throws Exception {
    String now = signature();
    if ("write".equals(System.getProperty("spi.signature"))) {
      Files.writeString(FILE, now);
    }
    assertThat(now)
        .as(
            "What plugins are compiled against has changed. If that is meant: a removal or a"
                + " narrower type breaks plugins (raise tamis.spi.version in the root pom and say"
                + " it under 'For plugin authors' in the change log); then renew the file by%n"
                + "  mvn -q -pl engine -am test -Dtest=SpiSignatureTest"
                + " -Dsurefire.failIfNoSpecifiedTests=false -Dspi.signature=write%n")
        .isEqualTo(Files.readString(FILE));
  }

  @Test
  void the_signature_covers_the_whole_contract() throws Exception {
    assertThat(signature().lines())
        .contains(
            "interface Calculation<I extends Record, R extends Record>",
            "  abstract Answer<R> calculate(I, Kitchen)",
            "  default boolean readsTrials()",
            "record Fault",
            "  component @Nullable String allowed",
            "annotation Described",
            "record To",
            "  component @Nullable Coat coat",
            "record Ingredient",
            "record Mass",
            "  static Line of(String, String)")
        .hasSizeGreaterThan(1_000);
  }

  private static String signature() throws Exception {
    StringBuilder text = new StringBuilder();
    print(text, publicTypes(Plugin.class), true);
    print(text, publicTypes(Fault.class), true);
    print(text, publicTypes(Notes.class), true);
    print(text, OF_RECORD, true);
    for (Class<?> one :
        List.of(
            Formula.class,
            Ingredient.class,
            Mass.class,
            Pan.class,
            PriceList.class,
            Table.class,
            Proximates.class,
            Trial.class)) {
      print(text, publicTypes(one), true);
    }
    return text.toString();
  }

  private static void print(StringBuilder text, List<Class<?>> types, boolean methods) {
    text.append("package ").append(types.get(0).getPackageName()).append("\n\n");
    for (Class<?> type : types) {
      text.append(kind(type)).append(' ').append(name(type)).append('\n');
      members(type, methods).forEach(member -> text.append("  ").append(member).append('\n'));
      text.append('\n');
    }
  }

  /** All public types beside {@code one}, nested ones too, by name. */
  private static List<Class<?>> publicTypes(Class<?> one) throws Exception {
    URL here = one.getResource(one.getSimpleName() + ".class");
    try (Stream<Path> files = Files.list(Path.of(here.toURI()).getParent())) {
      List<Class<?>> types = new ArrayList<>();
      for (Path file : files.filter(f -> f.toString().endsWith(".class")).toList()) {
        String name = file.getFileName().toString().replace(".class", "");
        Class<?> type = Class.forName(one.getPackageName() + "." + name);
        if (isPublic(type) && !name.equals("package-info")) {
          types.add(type);
        }
      }
      types.sort(Comparator.comparing(Class::getName));
      return types;
    }
  }

  private static boolean isPublic(Class<?> type) {
    return Modifier.isPublic(type.getModifiers())
        && (type.getEnclosingClass() == null || isPublic(type.getEnclosingClass()));
  }

  private static String kind(Class<?> type) {
    if (type.isAnnotation()) {
      return "annotation";
    }
    if (type.isInterface()) {
      return "interface";
    }
    return type.isEnum() ? "enum" : type.isRecord() ? "record" : "class";
  }

  private static String name(Class<?> type) {
    String parameters =
        Arrays.stream(type.getTypeParameters())
            .map(p -> p + " extends " + plain(p.getBounds()[0].getTypeName()))
            .collect(Collectors.joining(", "));
    String name = type.getName().substring(type.getPackageName().length() + 1).replace('$', '.');
    return parameters.isEmpty() ? name : name + "<" + parameters + ">";
  }

  private static Set<String> members(Class<?> type, boolean methods) {
    List<String> inOrder = new ArrayList<>();
    if (type.isEnum()) {
      for (Object constant : type.getEnumConstants()) {
        inOrder.add("constant " + ((Enum<?>) constant).name());
      }
    }
    if (type.isRecord()) {
      for (RecordComponent part : type.getRecordComponents()) {
        String nullable = nullable(part.getAnnotatedType());
        inOrder.add("component " + nullable + plain(part.getGenericType()) + " " + part.getName());
      }
    }
    Set<String> sorted = new TreeSet<>();
    if (methods) {
      for (Constructor<?> made : type.getDeclaredConstructors()) {
        if (Modifier.isPublic(made.getModifiers()) && !isCanonical(made)) {
          sorted.add("constructor(" + parameters(made.getParameters()) + ")");
        }
      }
      for (Method method : type.getDeclaredMethods()) {
        if (Modifier.isPublic(method.getModifiers()) && !isUnderstood(type, method)) {
          sorted.add(method(method));
        }
      }
    }
    Set<String> all = new LinkedHashSet<>(inOrder);
    all.addAll(sorted);
    return all;
  }

  private static boolean isCanonical(Constructor<?> made) {
    Class<?> type = made.getDeclaringClass();
    return type.isRecord() && made.getParameterCount() == type.getRecordComponents().length;
  }

  /** What its kind of type has in any case. */
  private static boolean isUnderstood(Class<?> type, Method method) {
    String name = method.getName();
    boolean accessor =
        type.isRecord()
            && method.getParameterCount() == 0
            && Arrays.stream(type.getRecordComponents()).anyMatch(p -> p.getName().equals(name));
    boolean listed = type.isEnum() && List.of("values", "valueOf").contains(name);
    boolean object = List.of("toString", "equals", "hashCode").contains(name);
    return method.isSynthetic() || accessor || listed || object;
  }

  private static String method(Method method) {
    String how =
        Modifier.isStatic(method.getModifiers())
            ? "static "
            : method.isDefault()
                ? "default "
                : Modifier.isAbstract(method.getModifiers()) ? "abstract " : "";
    String value =
        method.getDefaultValue() == null ? "" : " default " + written(method.getDefaultValue());
    return how
        + nullable(method.getAnnotatedReturnType())
        + plain(method.getGenericReturnType())
        + " "
        + method.getName()
        + "("
        + parameters(method.getParameters())
        + ")"
        + value;
  }

  private static String written(Object value) {
    return value instanceof String text ? "\"" + text + "\"" : String.valueOf(value);
  }

  private static String parameters(Parameter[] parameters) {
    return Arrays.stream(parameters)
        .map(p -> nullable(p.getAnnotatedType()) + plain(p.getParameterizedType()))
        .collect(Collectors.joining(", "));
  }

  private static String nullable(AnnotatedType type) {
    return type.isAnnotationPresent(Nullable.class) ? "@Nullable " : "";
  }

  private static String plain(Type type) {
    return plain(type.getTypeName());
  }

  /** Without packages: {@code Map<String, Table>}. */
  private static String plain(String name) {
    return name.replaceAll("([a-z0-9]+\\.)+(?=[A-Z])", "").replace('$', '.');
  }
}
