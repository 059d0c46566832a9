package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Money;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/**
 * Writes values as text for a cell.
 *
 * @param decimalComma numbers have a decimal comma
 */
record Cells(boolean decimalComma) {

  /** The bare text of a single value; of money the amount alone. */
  String single(Form form, Object value) {
    if (form instanceof Form.Numeric) {
      return number(Figures.shown((Number) value));
    }
    if (form instanceof Form.Choice choice) {
      return choice.word(value);
    }
    if (form instanceof Form.Free) {
      return free(value);
    }
    if (value instanceof Money money) {
      return amount(money);
    }
    if (form instanceof Form.Text text && text.ofNumber() != null) {
      return Figures.isNumber(value.toString()) ? number(value.toString()) : value.toString();
    }
    return value.toString();
  }

  /** A number by itself, an object by its values: a range is its ends. */
  private String free(Object value) {
    if (value instanceof Number number) {
      return number(Figures.shown(number));
    }
    return value instanceof Map<?, ?> map
        ? String.join("-", map.values().stream().map(this::free).toList())
        : value.toString();
  }

  String amount(Money money) {
    String text = money.toString();
    return number(text.substring(0, text.indexOf(' ')));
  }

  /** A cell of a table: as {@link #single}, or several values joined by semicolons. */
  String joined(Form form, @Nullable Object value) {
    if (value == null) {
      return "";
    }
    if (form instanceof Form.Listed listed) {
      return String.join(
          "; ", ((List<?>) value).stream().map(entry -> inner(listed.entry(), entry)).toList());
    }
    if (form instanceof Form.Mapped mapped) {
      List<String> entries = new ArrayList<>();
      ((Map<?, ?>) value)
          .forEach(
              (name, entry) ->
                  entries.add(Names.of(mapped.name(), name) + " " + inner(mapped.entry(), entry)));
      return String.join("; ", entries);
    }
    return inner(form, value);
  }

  private String inner(Form form, Object value) {
    if (value instanceof Money money) {
      return amount(money) + " " + money.currency().getCurrencyCode();
    }
    if (form instanceof Form.Either && value instanceof TextOrObject<?> either) {
      @Nullable String text = either.text();
      @Nullable Record object = either.object();
      if (text != null) {
        return text;
      }
      return object == null ? "" : spaced(object);
    }
    if (form instanceof Form.Nested) {
      return spaced((Record) value);
    }
    return form instanceof Form.Listed || form instanceof Form.Mapped
        ? "(" + joined(form, value) + ")"
        : single(form, value);
  }

  private String spaced(Record record) {
    List<String> values = new ArrayList<>();
    for (Component component : Shape.of(record.getClass()).components().values()) {
      @Nullable Object value = component.of(record);
      String text = value == null ? "" : inner(component.form(), value);
      if (!text.isEmpty() && !text.equals("()")) {
        values.add(text);
      }
    }
    return String.join(" ", values);
  }

  private String number(String text) {
    return decimalComma ? text.replace('.', ',') : text;
  }
}
