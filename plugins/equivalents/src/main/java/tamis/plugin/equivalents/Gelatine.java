package tamis.plugin.equivalents;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Spread;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * Gelatine by its strength in bloom. The masses that set alike stand as the root of their blooms:
 * the figure to work with; some reckon in plain proportion, which is the other end of the spread.
 * Leaves of all grades are made to set alike, so leaf stands for leaf.
 */
final class Gelatine {
  static final Table BLOOMS =
      TableReader.read(
          Gelatine.class,
          "/tamis/plugin/equivalents/gelatine-bloom.csv",
          "Strength of gelatine by form and grade, in bloom",
          List.of("form", "grade"));
  private static final String LEAF = "gelatine-leaf";

  private final Equivalents.Input input;
  private final Notes notes;

  Gelatine(Equivalents.Input input, Notes notes) {
    this.input = input;
    this.notes = notes;
  }

  static boolean is(String ingredient) {
    return forms().contains(ingredient);
  }

  /** Ids of the forms. */
  static List<String> forms() {
    return BLOOMS.rows().stream().map(row -> row.text("form")).distinct().toList();
  }

  /** Refuses what is said of gelatine where there is none. */
  static void refuseIn(Equivalents.Input input) {
    Faults faults = new Faults();
    String only = "is for gelatine, from one form into another";
    if (input.bloom() != null) {
      faults.add(FaultCode.INCONSISTENT, "/bloom", "`bloom` " + only);
    }
    if (input.intoBloom() != null) {
      faults.add(FaultCode.INCONSISTENT, "/intoBloom", "`intoBloom` " + only);
    }
    if (input.intoState() != null) {
      faults.add(FaultCode.INCONSISTENT, "/intoState", "`intoState` " + only);
    }
    faults.refuseIfAny();
  }

  /** Grams wanted for each gram that is given. */
  Spread perGram(Ingredient from, Ingredient into) {
    Spread given = bloom(from.id(), input.bloom(), input.state(), "bloom", "/state");
    Spread wanted =
        bloom(into.id(), input.intoBloom(), input.intoState(), "intoBloom", "/intoState");
    Spread proportion = given.over(wanted);
    double root = Math.sqrt(proportion.typical());
    @Nullable Double leaf = leafForLeaf(from, into);
    double typical = leaf == null ? root : leaf;
    List<Double> all =
        List.of(
            typical,
            root,
            proportion.low(),
            Math.sqrt(proportion.low()),
            proportion.high(),
            Math.sqrt(proportion.high()));
    notes.estimate(
        "bloom-rule",
        "/into",
        String.format(
            Locale.ROOT,
            "%s; the spread reaches to plain proportion of %.0f to %.0f bloom: try a small cup before a batch",
            leaf == null
                ? "by the root of the blooms"
                : "leaf for leaf, as grades are made to set alike",
            given.typical(),
            wanted.typical()));
    notes.remark("gelatine-water", "/into", water(into));
    return new Spread(
        all.stream().mapToDouble(d -> d).min().orElseThrow(),
        typical,
        all.stream().mapToDouble(d -> d).max().orElseThrow());
  }

  private static String water(Ingredient into) {
    return into.id().equals(LEAF)
        ? "leaves are soaked in plenty of cold water and pressed out; water that the powder was to swell in stays in the formula"
        : "powder swells in five to six times its mass of cold water, which is taken from the water of the formula";
  }

  private @Nullable Double leafForLeaf(Ingredient from, Ingredient into) {
    if (!from.id().equals(LEAF)
        || !into.id().equals(LEAF)
        || input.bloom() != null
        || input.intoBloom() != null) {
      return null;
    }
    Weighing weighing = new Weighing(Measures.METRIC, "/into", "/grams", notes);
    return weighing.gramsPerUnit("leaf", into, input.intoState()).typical()
        / weighing.gramsPerUnit("leaf", from, input.state()).typical();
  }

  private Spread bloom(
      String form, @Nullable Double said, @Nullable String grade, String name, String at) {
    if (said != null) {
      return Spread.exactly(said);
    }
    Row row = row(form, grade, at);
    notes.cite(row, "/grams");
    if (grade == null) {
      notes.remark(
          "bloom-assumed",
          "/" + name,
          "`"
              + form
              + "` is taken as "
              + row.text("grade")
              + " grade, "
              + row.text("bloom_typical")
              + " bloom; say `"
              + name
              + "` as the pack tells it");
    }
    return new Spread(
        row.number("bloom_low"), row.number("bloom_typical"), row.number("bloom_high"));
  }

  private static Row row(String form, @Nullable String grade, String at) {
    List<String> grades = new ArrayList<>();
    for (Row row : BLOOMS.rows()) {
      if (row.text("form").equals(form)) {
        if (grade == null ? row.yes("usual") : row.text("grade").equals(grade)) {
          return row;
        }
        grades.add(row.text("grade"));
      }
    }
    if (grade == null) {
      throw new BadTable(BLOOMS.name(), 1, "usual", "no usual grade of " + form);
    }
    String known = String.join(", ", grades);
    throw new Refusal(
        new Fault(
            FaultCode.UNKNOWN_STATE,
            at,
            grade,
            known,
            "no grade `" + grade + "` of `" + form + "` is known; known are " + known));
  }
}
