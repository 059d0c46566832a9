package tamis.engine.ingredient;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.table.CsvFile;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * All household measures that the composition table's publisher gives for our foods, from a file
 * with {@code ndb_no,seq,amount,measure,grams}: each is what we weigh, or stands in
 * portions-left-out.csv with a reason. The file is named by {@code -Dtamis.portions=FILE}.
 */
@Tag("shared-check")
class SharedPortionsTest {
  private static final Table LEFT_OUT =
      TableReader.plain(
          SharedPortionsTest.class, "portions-left-out.csv", "Left out", List.of("ndb", "seq"));
  private static final Pattern UNIT =
      Pattern.compile(
          "(cup|tbsp|tablespoon|tsp|teaspoon|fl oz|quart|pint|dash|jigger|liter|ml|oz|lb)\\b.*");
  private static final Map<String, List<Ingredient>> BY_NUMBER = new HashMap<>();

  /** One measure of the file. */
  private record Portion(String number, String seq, double amount, String measure, String grams) {
    double each() {
      return Double.parseDouble(grams) / amount;
    }

    /** Half of the last digit that is printed. */
    double rounding() {
      int digits = grams.indexOf('.') < 0 ? 0 : grams.length() - grams.indexOf('.') - 1;
      return (0.5 * Math.pow(10, -digits) + 1e-9) / amount;
    }
  }

  @BeforeAll
  static void the_foods_by_the_number_of_their_record() {
    for (Ingredient ingredient : ReferenceIngredients.standard().all()) {
      Matcher record = Pattern.compile("usda-sr28, NDB (\\d{5})\\b.*").matcher(ingredient.source());
      if (record.matches()) {
        BY_NUMBER.computeIfAbsent(record.group(1), n -> new ArrayList<>()).add(ingredient);
      }
    }
  }

  @Test
  void every_measure_is_weighed_as_printed_or_left_out_for_a_reason() throws IOException {
    List<Portion> portions = portions();
    assertThat(portions).hasSize(796);
    List<Portion> unexplained = new ArrayList<>();
    Set<String> needless = new LinkedHashSet<>();
    int reproduced = 0;
    for (Portion portion : portions) {
      boolean leftOut = LEFT_OUT.row(portion.number() + "/" + portion.seq()) != null;
      if (!weighed(portion)) {
        unexplained.addAll(leftOut ? List.of() : List.of(portion));
      } else {
        reproduced++;
        needless.addAll(leftOut ? List.of(portion.toString()) : List.of());
      }
    }
    assertThat(unexplained).isEmpty();
    assertThat(needless).isEmpty();
    assertThat(reproduced + LEFT_OUT.rows().size()).isEqualTo(portions.size());
  }

  private static List<Portion> portions() throws IOException {
    String file = System.getProperty("tamis.portions");
    assertThat(file).as("say where the file is: -Dtamis.portions=FILE").isNotNull();
    return CsvFile.read(Path.of(file)).stream()
        .map(
            row ->
                new Portion(
                    row.get("ndb_no"),
                    row.get("seq"),
                    Double.parseDouble(row.get("amount")),
                    row.get("measure"),
                    row.get("grams")))
        .toList();
  }

  private static boolean weighed(Portion portion) {
    for (Ingredient ingredient : BY_NUMBER.getOrDefault(portion.number(), List.of())) {
      if (byUnit(portion, ingredient) || byPiece(portion, ingredient)) {
        return true;
      }
    }
    return false;
  }

  private static boolean byUnit(Portion portion, Ingredient ingredient) {
    Matcher unit = UNIT.matcher(portion.measure());
    if (!unit.matches()) {
      return false;
    }
    List<String> states = new ArrayList<>(ingredient.states());
    states.add(null);
    return states.stream().anyMatch(state -> weighs(portion, unit.group(1), ingredient, state));
  }

  private static boolean byPiece(Portion portion, Ingredient ingredient) {
    return ingredient.pieces().stream()
        .anyMatch(piece -> weighs(portion, piece.piece(), ingredient, piece.state()));
  }

  private static boolean weighs(Portion portion, String unit, Ingredient ingredient, String state) {
    try {
      double grams =
          new Weighing(Measures.US, "", "", new Notes())
              .grams(Quantity.of(1, unit), ingredient, state)
              .typical();
      return Math.abs(grams - portion.each()) <= portion.rounding();
    } catch (Refusal notKnownLikeThis) {
      return false;
    }
  }
}
