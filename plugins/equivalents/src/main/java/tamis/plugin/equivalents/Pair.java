package tamis.plugin.equivalents;

import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * A row of the table of equivalents, read forth or back.
 *
 * @param back whether what the row leads to is given, and what it starts from is wanted
 */
record Pair(Row row, boolean back) {
  static final Table TABLE =
      TableReader.read(
          Pair.class,
          "/tamis/plugin/equivalents/equivalents.csv",
          "Forms of an ingredient in place of each other, gram for gram",
          List.of("from", "into"));
  static final Table WITH =
      TableReader.read(
          Pair.class,
          "/tamis/plugin/equivalents/equivalents-with.csv",
          "What is added with the other form, for each gram that it replaces",
          List.of("from", "into", "with"));

  /** The row between two ingredients, or null. */
  static @Nullable Pair between(String from, String into) {
    @Nullable Row forth = TABLE.row(from + "/" + into);
    if (forth != null) {
      return new Pair(forth, false);
    }
    @Nullable Row back = TABLE.row(into + "/" + from);
    return back == null || back.yes("one_way") ? null : new Pair(back, true);
  }

  /** Ids of all that can take the place of an ingredient. */
  static Collection<String> known(String from) {
    TreeSet<String> known = new TreeSet<>();
    for (Row row : TABLE.rows()) {
      if (row.text("from").equals(from)) {
        known.add(row.text("into"));
      } else if (row.text("into").equals(from) && !row.yes("one_way")) {
        known.add(row.text("from"));
      }
    }
    return known;
  }

  /** Ids of all ingredients of the table, and of gelatine. */
  static Collection<String> all() {
    TreeSet<String> all = new TreeSet<>(Gelatine.forms());
    for (Row row : TABLE.rows()) {
      all.add(row.text("from"));
      all.add(row.text("into"));
    }
    return all;
  }

  /** Eggs of all sizes are the same food. */
  static String food(String ingredient) {
    return IngredientTables.EGGS.row(ingredient) == null ? ingredient : "egg";
  }

  /** Grams that are wanted for each gram that is given. */
  Spread perGram() {
    Spread forth =
        new Spread(
            row.number("low_g_per_g"), row.number("typical_g_per_g"), row.number("high_g_per_g"));
    return back ? Spread.exactly(1).over(forth) : forth;
  }

  /** What is added, or left out, when so many grams are replaced. */
  List<AlsoAdd> with(double grams, Notes notes) {
    List<AlsoAdd> added = new ArrayList<>();
    for (Row with : WITH.rows()) {
      if (with.text("from").equals(row.text("from"))
          && with.text("into").equals(row.text("into"))) {
        double perGram = with.number("g_per_g");
        notes.cite(with, "/alsoAdd/" + added.size() + "/grams");
        added.add(
            new AlsoAdd(
                with.text("with"),
                back ? -grams * perGram / row.number("typical_g_per_g") : grams * perGram));
      }
    }
    return added;
  }

  /** What a baker should know about the other form. */
  @Nullable String note() {
    return row.textOrNull(back ? "note_back" : "note");
  }

  /** Whether the proportion is practice, not composition. */
  boolean isPractice() {
    return row.text("basis").equals("common practice");
  }
}
