package tamis.engine.spi;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import tamis.engine.record.Component;
import tamis.engine.record.Described;
import tamis.engine.record.Form;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;

/**
 * Makes of one input, written as plain values, the inputs at the edges of what its record allows:
 * each list as long as it may be, each bounded value at either bound; and one that is wrong
 * everywhere. Whether they can be meant is for the calculation to say.
 */
final class Extremes {
  /** Of a list without a bound of its own: what a formula may have in lines. */
  private static final int LONGEST = 2_000;

  private final Map<String, Map<String, Object>> found = new LinkedHashMap<>();

  private Extremes() {}

  /** The inputs by what is extreme about them. */
  static Map<String, Map<String, Object>> of(Class<? extends Record> type, Map<String, ?> input) {
    Extremes extremes = new Extremes();
    extremes.walk(Shape.of(type), input, "", changed -> changed);
    return extremes.found;
  }

  /** The input with a value that cannot be read under each of its names. */
  static Map<String, Object> allWrong(Class<? extends Record> type, Map<String, ?> input) {
    Map<String, Object> wrong = new LinkedHashMap<>(input);
    Map<String, Component> components = Shape.of(type).components();
    wrong.replaceAll(
        (name, value) -> components.get(name).form() instanceof Form.Words ? true : List.of("?!"));
    wrong.replaceAll(
        (name, value) -> components.get(name).form() instanceof Form.Listed ? "?!" : value);
    return wrong;
  }

  private void walk(
      Shape shape,
      Map<String, ?> at,
      String pointer,
      Function<Map<String, Object>, Map<String, Object>> whole) {
    at.forEach(
        (name, value) -> {
          Component component = shape.components().get(name);
          String here = pointer + "/" + RecordReader.escaped(name);
          walk(
              component.form(),
              component.described(),
              value,
              here,
              v -> whole.apply(with(at, name, v)));
        });
  }

  @SuppressWarnings("unchecked") // objects of a tree have names of text
  private void walk(
      Form form,
      Described described,
      Object value,
      String pointer,
      Function<Object, Map<String, Object>> whole) {
    if (value instanceof Map<?, ?> object && form instanceof Form.Nested nested) {
      walk(nested.shape(), (Map<String, ?>) object, pointer, whole::apply);
    } else if (value instanceof Map<?, ?> object && form instanceof Form.Either either) {
      walk(Shape.of(either.object()), (Map<String, ?>) object, pointer, whole::apply);
    } else if (value instanceof List<?> list
        && form instanceof Form.Listed listed
        && !list.isEmpty()) {
      int most = Math.min(Math.min(described.most(), described.limit().usual()), limit(described));
      found.put(pointer + " with " + most + " entries", whole.apply(repeated(list, most)));
      walk(
          listed.entry(),
          described,
          list.get(0),
          pointer + "/0",
          first -> whole.apply(withFirst(list, first)));
    } else if (form instanceof Form.Numeric || form instanceof Form.Text) {
      bound(form, described.atLeast(), pointer, whole);
      bound(form, described.atMost(), pointer, whole);
    }
  }

  private static int limit(Described described) {
    return described.limit().usual() == Integer.MAX_VALUE ? LONGEST : described.limit().usual();
  }

  private void bound(
      Form form, String bound, String pointer, Function<Object, Map<String, Object>> whole) {
    if (!bound.isEmpty()) {
      Object value = form instanceof Form.Numeric ? new BigDecimal(bound) : bound;
      found.put(pointer + " = " + bound, whole.apply(value));
    }
  }

  private static Map<String, Object> with(Map<String, ?> map, String name, Object value) {
    Map<String, Object> changed = new LinkedHashMap<>(map);
    changed.put(name, value);
    return changed;
  }

  private static List<Object> withFirst(List<?> list, Object first) {
    List<Object> changed = new ArrayList<>(list);
    changed.set(0, first);
    return changed;
  }

  private static List<Object> repeated(List<?> list, int count) {
    List<Object> longer = new ArrayList<>(count);
    for (int i = 0; i < count; i++) {
      longer.add(list.get(i % list.size()));
    }
    return longer;
  }
}
