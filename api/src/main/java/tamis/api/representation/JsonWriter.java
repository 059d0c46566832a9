package tamis.api.representation;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import java.io.IOException;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Component;
import tamis.engine.record.Form;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;
import tamis.engine.record.TextOrObject;

/** Writes values by their forms. What is absent is left out. */
final class JsonWriter {
  /** The components of each kind of record, with their names as they are written. */
  private static final ClassValue<Field[]> FIELDS =
      new ClassValue<>() {
        @Override
        protected Field[] computeValue(Class<?> type) {
          List<Component> components = Shape.of(type.asSubclass(Record.class)).inOrder();
          return components.stream().map(Field::of).toArray(Field[]::new);
        }
      };

  private record Field(SerializedString name, Component component) {
    static Field of(Component component) {
      return new Field(new SerializedString(component.name()), component);
    }
  }

  private final JsonGenerator json;
  private final boolean exact;
  private final Figure figure = new Figure();

  /**
   * @param json what is written to
   * @param exact numbers are read back as themselves, as those of a document must be
   */
  JsonWriter(JsonGenerator json, boolean exact) {
    this.json = json;
    this.exact = exact;
  }

  JsonGenerator json() {
    return json;
  }

  /** A described record; of one that is to be read again, nothing is added to it. */
  void record(Record record) throws IOException {
    json.writeStartObject();
    components(record);
    json.writeEndObject();
  }

  void components(Record record) throws IOException {
    for (Field field : FIELDS.get(record.getClass())) {
      Component component = field.component();
      @Nullable Object value = component.isFigure() ? null : component.of(record);
      if (component.isFigure() || isTold(component, value)) {
        json.writeFieldName(field.name());
        try {
          if (value == null) {
            figure(component.figureOf(record));
          } else {
            value(component.form(), value);
          }
        } catch (Refusal refusal) {
          throw refusal.under("/" + RecordReader.escaped(component.name()));
        }
      }
    }
  }

  private static boolean isTold(Component component, @Nullable Object value) {
    return value != null && (component.absent() == null || !isEmpty(value));
  }

  private void number(Number number) throws IOException {
    if (number instanceof Integer || number instanceof Long) {
      json.writeNumber(number.longValue());
    } else if (number instanceof Double value) {
      figure(value);
    } else {
      json.writeNumber(Figures.text(number));
    }
  }

  private void figure(double value) throws IOException {
    if (!exact && figure.is(value)) {
      json.writeNumber(figure.chars(), figure.from(), figure.length());
    } else {
      json.writeNumber(exact ? Figures.text(value) : Figures.shown(value));
    }
  }

  private static boolean isEmpty(Object value) {
    return value instanceof List<?> list
        ? list.isEmpty()
        : value instanceof Map<?, ?> map && map.isEmpty();
  }

  void value(Form form, Object value) throws IOException {
    if (form instanceof Form.Numeric) {
      number((Number) value);
    } else if (form instanceof Form.Flag) {
      json.writeBoolean((Boolean) value);
    } else if (form instanceof Form.Words) {
      json.writeString((String) value);
    } else if (form instanceof Form.Choice choice) {
      json.writeString(choice.word(value));
    } else if (form instanceof Form.Text text) {
      text(text, value);
    } else if (form instanceof Form.Nested) {
      record((Record) value);
    } else if (form instanceof Form.Either) {
      either((TextOrObject<?>) value);
    } else if (form instanceof Form.Free) {
      any(value);
    } else if (form instanceof Form.Listed listed) {
      list(listed, (List<?>) value);
    } else {
      map((Form.Mapped) form, (Map<?, ?>) value);
    }
  }

  /** A value that may be read from a bare number is written as one. */
  private void text(Form.Text form, Object value) throws IOException {
    String text = value.toString();
    if (form.ofNumber() != null && Figures.isNumber(text)) {
      json.writeNumber(Figures.text(new BigDecimal(text)));
    } else {
      json.writeString(text);
    }
  }

  private void either(TextOrObject<?> value) throws IOException {
    @Nullable String text = value.text();
    @Nullable Record object = value.object();
    if (text != null) {
      json.writeString(text);
    } else if (object != null) {
      record(object);
    } else {
      json.writeNull();
    }
  }

  private void list(Form.Listed form, List<?> list) throws IOException {
    json.writeStartArray();
    int index = 0;
    for (Object entry : list) {
      try {
        value(form.entry(), entry);
      } catch (Refusal refusal) {
        throw refusal.under("/" + index);
      }
      index++;
    }
    json.writeEndArray();
  }

  private void map(Form.Mapped form, Map<?, ?> map) throws IOException {
    json.writeStartObject();
    for (Map.Entry<?, ?> entry : map.entrySet()) {
      String name = Names.of(form.name(), entry.getKey());
      json.writeFieldName(name);
      try {
        value(form.entry(), entry.getValue());
      } catch (Refusal refusal) {
        throw refusal.under("/" + RecordReader.escaped(name));
      }
    }
    json.writeEndObject();
  }

  /** A value whose form is not told: a record, plain tree, number, text, constant or null. */
  void any(@Nullable Object value) throws IOException {
    if (value == null) {
      json.writeNull();
    } else if (value instanceof Record record && !(value instanceof TextOrObject)) {
      record(record);
    } else if (value instanceof TextOrObject<?> either) {
      either(either);
    } else if (value instanceof Map<?, ?> map) {
      json.writeStartObject();
      for (Map.Entry<?, ?> entry : map.entrySet()) {
        json.writeFieldName(String.valueOf(entry.getKey()));
        any(entry.getValue());
      }
      json.writeEndObject();
    } else if (value instanceof Iterable<?> list) {
      json.writeStartArray();
      for (Object entry : list) {
        any(entry);
      }
      json.writeEndArray();
    } else if (value instanceof Number number) {
      number(number);
    } else if (value instanceof Boolean flag) {
      json.writeBoolean(flag);
    } else {
      json.writeString(Names.of(value));
    }
  }
}
