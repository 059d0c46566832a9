package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;

/** Writes one value as bare text, for the cell of a spreadsheet or the variable of a script. */
final class ResultText {
  private static final int MOST_POINTERS = 60;

  private ResultText() {}

  /**
   * The picked value, else the headline of the result. No unit, no grouping, no newline.
   *
   * @throws Refusal if there is no single value there, or it is not known
   */
  static String of(Record result, Options options) {
    Shape shape = Shape.of(result.getClass());
    String picked = options.pick();
    String pointer = picked == null ? headline(shape) : picked;
    refuseParts(Pick.of(result, pointer), shape);
    Pick pick = Incomplete.checked(result, pointer, options);
    @Nullable Object value = pick.value();
    if (value == null) {
      return "";
    }
    try {
      return new Cells(options.decimalComma()).single(pick.form(), value);
    } catch (Refusal refusal) {
      throw refusal.under(pick.pointer());
    }
  }

  private static String headline(Shape shape) {
    List<Component> path = shape.headline();
    if (path.isEmpty()) {
      String allowed = singles(shape);
      throw new Refusal(
          new Fault(
              FaultCode.NO_SUCH_VALUE,
              "/pick",
              null,
              allowed,
              "this calculation has no one figure; say pick= one of " + allowed));
    }
    return path.stream()
        .map(component -> "/" + RecordReader.escaped(component.name()))
        .collect(Collectors.joining());
  }

  private static void refuseParts(Pick pick, Shape shape) {
    Form form = pick.form();
    boolean single =
        !(form instanceof Form.Nested
            || form instanceof Form.Listed
            || form instanceof Form.Mapped
            || form instanceof Form.Either);
    if (!single) {
      String allowed = singles(shape);
      throw new Refusal(
          new Fault(
              FaultCode.WRONG_TYPE,
              "/pick",
              pick.pointer(),
              allowed,
              "text is a single value, but `"
                  + pick.pointer()
                  + "` has parts; pick for example one of "
                  + allowed));
    }
  }

  /** Pointers of the single values that results of a shape have. */
  private static String singles(Shape shape) {
    List<String> pointers = new ArrayList<>();
    collect(new Form.Nested(shape.type()), "", pointers, List.of());
    return String.join(", ", pointers.subList(0, Math.min(MOST_POINTERS, pointers.size())));
  }

  private static void collect(Form form, String at, List<String> found, List<Class<?>> outer) {
    if (form instanceof Form.Nested nested) {
      if (!outer.contains(nested.type())) {
        List<Class<?>> inner = new ArrayList<>(outer);
        inner.add(nested.type());
        nested
            .shape()
            .components()
            .forEach(
                (name, part) ->
                    collect(part.form(), at + "/" + RecordReader.escaped(name), found, inner));
      }
    } else if (form instanceof Form.Listed listed) {
      collect(listed.entry(), at + "/0", found, outer);
    } else if (form instanceof Form.Mapped map) {
      List<String> words = Form.allowed(map.name());
      collect(map.entry(), at + "/" + (words.isEmpty() ? "NAME" : words.get(0)), found, outer);
    } else {
      found.add(at);
    }
  }
}
