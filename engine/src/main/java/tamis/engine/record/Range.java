package tamis.engine.record;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Bounds of a component in its own type, with the words that a person is told. */
public final class Range {
  /** Asked of each value. */
  private final Bound[] bounds;

  private Range(List<Bound> bounds) {
    this.bounds = bounds.toArray(new Bound[0]);
  }

  private record Bound(Comparable<Object> limit, boolean low, boolean inclusive, String words) {
    boolean holds(Object value) {
      int order = limit.compareTo(value);
      return low ? order < 0 || (inclusive && order == 0) : order > 0 || (inclusive && order == 0);
    }
  }

  static Range of(Form form, Described described) {
    List<Bound> bounds = new ArrayList<>();
    add(bounds, form, described.atLeast(), true, true, "at least ");
    add(bounds, form, described.moreThan(), true, false, "more than ");
    add(bounds, form, described.atMost(), false, true, "at most ");
    add(bounds, form, described.lessThan(), false, false, "less than ");
    return new Range(bounds);
  }

  /** What is allowed, in words, if {@code value} is outside; null if it is inside. */
  @Nullable String violatedBy(Object value) {
    for (Bound bound : bounds) {
      if (!bound.holds(value)) {
        return words();
      }
    }
    return null;
  }

  private String words() {
    return String.join(" and ", Arrays.stream(bounds).map(Bound::words).toList());
  }

  private static void add(
      List<Bound> bounds, Form form, String limit, boolean low, boolean inclusive, String words) {
    if (!limit.isEmpty()) {
      bounds.add(new Bound(comparable(form, limit), low, inclusive, words + limit));
    }
  }

  @SuppressWarnings("unchecked")
  private static Comparable<Object> comparable(Form form, String limit) {
    Object value;
    if (form instanceof Form.Numeric number) {
      value = Numbers.convert(number, new BigDecimal(limit));
    } else if (form instanceof Form.Text text) {
      value = Calls.parse(text.parse(), limit);
    } else {
      throw new IllegalArgumentException("a bound stands on a number or quantity");
    }
    return (Comparable<Object>) value;
  }
}
