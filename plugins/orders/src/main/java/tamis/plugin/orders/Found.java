package tamis.plugin.orders;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads what another calculation answered, as plain values. */
record Found(Map<?, ?> values) {

  static Found of(Record result) {
    return new Found(Written.of(result));
  }

  @Nullable String text(String name) {
    @Nullable Object value = values.get(name);
    return value == null ? null : value.toString();
  }

  String textOr(String name, String otherwise) {
    @Nullable String text = text(name);
    return text == null ? otherwise : text;
  }

  @Nullable Double number(String name) {
    return values.get(name) instanceof Number number ? (Double) number.doubleValue() : null;
  }

  double numberOr(String name, double otherwise) {
    @Nullable Double number = number(name);
    return number == null ? otherwise : number;
  }

  List<Found> list(String name) {
    return values.get(name) instanceof List<?> list
        ? list.stream().map(one -> new Found((Map<?, ?>) one)).toList()
        : List.of();
  }

  List<String> texts(String name) {
    return values.get(name) instanceof List<?> list
        ? list.stream().map(String::valueOf).toList()
        : List.of();
  }
}
