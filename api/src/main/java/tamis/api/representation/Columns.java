package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.quantity.Money;
import tamis.engine.record.Component;
import tamis.engine.record.Form;

/** The columns of a kind of row: found from its form alone, so that they are always the same. */
final class Columns {
  private final List<Column> columns = new ArrayList<>();
  private final boolean wide;

  /** A column: its heading, and how its cell is found in a row. */
  private record Column(String heading, Function<Object, @Nullable Object> value, CellText text) {}

  private interface CellText {
    String of(Cells cells, Object value);
  }

  private Columns(boolean wide) {
    this.wide = wide;
  }

  /** Of rows of a table: lists inside a row are joined in one cell. */
  static Columns ofRows(Form row) {
    return of(row, true, "value");
  }

  /** Of a single row: its single values and lists of these. */
  static Columns ofOne(Form row, String name) {
    return of(row, false, name);
  }

  private static Columns of(Form row, boolean wide, String name) {
    Columns columns = new Columns(wide);
    columns.add(row instanceof Form.Nested ? "" : name, row, value -> value, List.of());
    return columns;
  }

  /** The columns of a map with open names: the name, and those of the value. */
  static Columns ofEntries(Form.Mapped map) {
    Columns columns = new Columns(true);
    columns.add(
        "name",
        new Form.Words(),
        entry -> Names.of(map.name(), ((Map.Entry<?, ?>) entry).getKey()),
        List.of());
    columns.add(
        map.entry() instanceof Form.Nested ? "" : "value",
        map.entry(),
        entry -> ((Map.Entry<?, ?>) entry).getValue(),
        List.of());
    return columns;
  }

  List<String> headings() {
    return columns.stream().map(Column::heading).toList();
  }

  List<String> cells(Cells cells, Object row) {
    List<String> line = new ArrayList<>(columns.size());
    for (Column column : columns) {
      @Nullable Object value = column.value().apply(row);
      try {
        line.add(value == null ? "" : column.text().of(cells, value));
      } catch (Refusal refusal) {
        throw refusal.under("/" + column.heading().replace('.', '/'));
      }
    }
    return line;
  }

  private void add(
      String heading, Form form, Function<Object, @Nullable Object> path, List<Class<?>> outer) {
    if (form instanceof Form.Nested nested && !outer.contains(nested.type())) {
      List<Class<?>> inner = new ArrayList<>(outer);
      inner.add(nested.type());
      for (Component component : nested.shape().components().values()) {
        add(
            dotted(heading, component.name()),
            component.form(),
            row -> component(component, path.apply(row)),
            inner);
      }
    } else if (form instanceof Form.Mapped map && map.name() instanceof Form.Choice choice) {
      choice
          .words()
          .forEach(
              (word, key) ->
                  add(
                      dotted(heading, word),
                      map.entry(),
                      row -> entry(path.apply(row), key),
                      outer));
    } else if (form instanceof Form.Text text && text.type() == Money.class) {
      columns.add(
          new Column(
              dotted(heading, "amount"), path, (cells, money) -> cells.amount((Money) money)));
      columns.add(
          new Column(
              dotted(heading, "currency"),
              path,
              (cells, money) -> ((Money) money).currency().getCurrencyCode()));
    } else if (wide || isNarrow(form)) {
      columns.add(new Column(heading, path, (cells, value) -> cell(cells, form, value)));
    }
  }

  private static @Nullable Object component(Component component, @Nullable Object record) {
    return record == null ? null : component.of((Record) record);
  }

  private static @Nullable Object entry(@Nullable Object map, Object key) {
    return map == null ? null : ((Map<?, ?>) map).get(key);
  }

  private static String dotted(String heading, String name) {
    return heading.isEmpty() ? name : heading + "." + name;
  }

  /** A single value, or a list of single values. */
  private static boolean isNarrow(Form form) {
    Form inner = form instanceof Form.Listed listed ? listed.entry() : form;
    return !(inner instanceof Form.Nested
        || inner instanceof Form.Listed
        || inner instanceof Form.Mapped);
  }

  private static String cell(Cells cells, Form form, Object value) {
    String text = cells.joined(form, value);
    boolean ours =
        form instanceof Form.Numeric || form instanceof Form.Flag || form instanceof Form.Choice;
    boolean amount = form instanceof Form.Text && text.matches("-\\d.*");
    return ours || amount ? text : CsvText.guarded(text);
  }
}
