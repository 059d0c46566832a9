package tamis.api.representation;

import java.util.Collection;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Nearest;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/**
 * A part of a result.
 *
 * @param pointer where it stands in the result (JSON Pointer, RFC 6901)
 * @param form how its value is written
 * @param value null if the result does not hold it
 */
record Pick(String pointer, Form form, @Nullable Object value) {
  private static final Form BILL_BY_NAME =
      new Form.Mapped(new Form.Words(), new Form.Nested(Bill.Weighed.class));

  /** The whole result. */
  static Pick whole(Record result) {
    return new Pick("", new Form.Nested(result.getClass()), result);
  }

  /**
   * What a pointer points at.
   *
   * @throws Refusal {@code no-such-value} if results of this kind have no such part
   */
  static Pick of(Record result, String pointer) {
    Pick at = whole(result);
    if (!pointer.isEmpty()) {
      for (String token : pointer.substring(1).split("/", -1)) {
        at = at.into(token.replace("~1", "/").replace("~0", "~"), pointer);
      }
    }
    return at;
  }

  private Pick into(String name, String all) {
    if (form instanceof Form.Nested nested) {
      return component(nested.shape(), (Record) value, name, all);
    }
    if (form instanceof Form.Either either) {
      @Nullable Record object = value == null ? null : ((TextOrObject<?>) value).object();
      return component(Shape.of(either.object()), object, name, all);
    }
    if (form instanceof Form.Listed listed) {
      return entry(listed, name, all);
    }
    if (form instanceof Form.Mapped mapped) {
      return named(mapped, name, all);
    }
    throw nothing(all, "`" + pointer + "` is a single value without parts", List.of(), name);
  }

  private Pick component(Shape shape, @Nullable Record record, String name, String all) {
    @Nullable Component component = shape.component(name);
    if (component != null) {
      return at(name, component.form(), record == null ? null : component.of(record));
    }
    if (pointer.isEmpty() && name.equals(Bill.NAME) && Bill.isAddedTo(shape) && record != null) {
      return at(name, BILL_BY_NAME, Bill.of(record));
    }
    throw nothing(all, "there is no `" + name + "`", shape.components().keySet(), name);
  }

  private Pick entry(Form.Listed listed, String index, String all) {
    if (!index.matches("0|[1-9][0-9]{0,8}")) {
      throw nothing(
          all, "`" + pointer + "` is a list: its entries are 0, 1, 2 …", List.of(), index);
    }
    if (value == null) {
      return at(index, listed.entry(), null);
    }
    List<?> list = (List<?>) value;
    int number = Integer.parseInt(index);
    if (number >= list.size()) {
      String why = "`" + pointer + "` has " + list.size() + " entries, the first is 0";
      throw nothing(all, why, List.of(), index);
    }
    return at(index, listed.entry(), list.get(number));
  }

  private Pick named(Form.Mapped mapped, String name, String all) {
    if (value instanceof Map<?, ?> map) {
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        if (Names.of(mapped.name(), entry.getKey()).equals(name)) {
          return at(name, mapped.entry(), entry.getValue());
        }
      }
    }
    // A name of a closed list can be meant though this result does not hold it.
    boolean open = !(mapped.name() instanceof Form.Choice);
    Collection<String> names = open ? keys() : Form.allowed(mapped.name());
    if (open ? value == null : names.contains(name)) {
      return at(name, mapped.entry(), null);
    }
    throw nothing(all, "there is no `" + name + "`", names, name);
  }

  private Collection<String> keys() {
    return value instanceof Map<?, ?> map
        ? map.keySet().stream().map(String::valueOf).toList()
        : List.of();
  }

  private Pick at(String name, Form inner, @Nullable Object found) {
    return new Pick(pointer + "/" + RecordReader.escaped(name), inner, found);
  }

  private Refusal nothing(String all, String why, Collection<String> names, String given) {
    String allowed =
        names.isEmpty()
            ? "a pointer into the result"
            : String.join(", ", names.stream().map(name -> pointer + "/" + name).toList());
    return new Refusal(
        new Fault(
            FaultCode.NO_SUCH_VALUE,
            "/pick",
            all,
            allowed,
            "`pick` is " + all + ", but " + why + Nearest.suggestion(given, names)));
  }
}
