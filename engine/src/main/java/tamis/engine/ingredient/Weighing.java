package tamis.engine.ingredient;

import java.util.List;
import java.util.TreeSet;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Dimension;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Unit;
import tamis.engine.quantity.Units;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/**
 * Turns a quantity of an ingredient into grams and back: by mass, by density of the state and
 * measure, or by the mass of a piece. A volume never becomes a mass without a density row.
 *
 * @param measures whose measures are meant; null: US is taken, and a remark says so
 * @param at pointer of the quantity in the input, for remarks and faults
 * @param cited pointer of the figure in the result, for sources
 */
public record Weighing(@Nullable Measures measures, String at, String cited, Notes notes) {

  /**
   * Grams of a measured quantity.
   *
   * @throws Refusal {@code no-density}, {@code no-piece-mass}, {@code unknown-state}, {@code
   *     wrong-dimension}, {@code no-size} for percent and as needed; pointers are relative
   */
  public Spread grams(Quantity quantity, Ingredient ingredient, @Nullable String state) {
    if (!quantity.isMeasured()) {
      throw refused(
          FaultCode.NO_SIZE,
          quantity.text(),
          "a mass, a volume or a count",
          quantity.text() + " is no amount by itself");
    }
    if (quantity.isRange()) {
      notes.estimate(
          "range", at, "`" + quantity.text() + "` is a range; the middle is worked with");
    }
    Spread perUnit = gramsPerUnit(quantity.unit(), ingredient, state);
    double share = quantity.amount();
    return new Spread(
        perUnit.low() * quantity.low(),
        perUnit.typical() * share,
        perUnit.high() * quantity.high());
  }

  /** Says what is taken for granted when the ingredient goes by this name: butter is unsalted. */
  public void remarkOnName(IngredientRef reference, String pointer) {
    @Nullable String assumed = ReferenceIngredients.standard().assumed(reference);
    if (assumed != null) {
      notes.remark("name-assumed", pointer, "`" + reference.name() + "`: " + assumed);
    }
  }

  /**
   * Grams of one of a unit.
   *
   * @throws Refusal as {@link #grams}
   */
  public Spread gramsPerUnit(String unitName, Ingredient ingredient, @Nullable String state) {
    Unit unit = unit(unitName);
    if (unit.imprecise()) {
      notes.estimate(
          "imprecise-measure",
          at,
          "a " + unit.symbol() + " is no exact measure; no two hands agree");
    }
    Dimension dimension = unit.dimension();
    if (dimension == Dimension.MASS) {
      return Spread.exactly(unit.factor());
    }
    if (dimension == Dimension.VOLUME) {
      return volume(unit, ingredient, state);
    }
    if (dimension == Dimension.COUNT || dimension == Dimension.PIECE) {
      String piece = dimension == Dimension.COUNT ? PieceMass.EACH : unit.symbol();
      return piece(piece, ingredient, state).times(unit.factor());
    }
    throw refused(
        FaultCode.WRONG_DIMENSION,
        unit.symbol(),
        "a mass, a volume or a count",
        "a " + dimension + " of an ingredient cannot be weighed");
  }

  /** The unit of this name by the measures that are meant; says so if they were assumed. */
  public Unit unit(String name) {
    if (measures != null) {
      return Units.standard().unit(name, measures);
    }
    if (Units.standard().dependsOnMeasures(name)) {
      notes.remark(
          "measure-assumed",
          at,
          "`" + name + "` is taken as the US measure; say `measures` for another");
    }
    return Units.standard().unit(name, Measures.US);
  }

  private Spread volume(Unit unit, Ingredient ingredient, @Nullable String state) {
    List<StateDensity> all = ingredient.densities();
    if (all.isEmpty()) {
      throw refused(
          FaultCode.NO_DENSITY,
          ingredient.id(),
          "a mass, or an ingredient with a density",
          "no density is known of `"
              + ingredient.id()
              + "`, so a volume of it cannot be weighed; give a mass");
    }
    String wanted = state == null ? StateDensity.AS_MEASURED : state;
    List<StateDensity> found = all.stream().filter(d -> d.state().equals(wanted)).toList();
    if (!found.isEmpty()) {
      StateDensity row = best(found, unit);
      cite(row, ingredient);
      return row.of(unit);
    }
    if (state != null) {
      throw unknownState(state, ingredient, all.stream().map(StateDensity::state).toList());
    }
    return anyState(all, unit, ingredient);
  }

  /** No state is said and the food has only particular ones: the first, with the span of all. */
  private Spread anyState(List<StateDensity> all, Unit unit, Ingredient ingredient) {
    String first = all.get(0).state();
    List<StateDensity> rows = all.stream().filter(d -> d.state().equals(first)).toList();
    StateDensity row = best(rows, unit);
    cite(row, ingredient);
    List<String> states = all.stream().map(StateDensity::state).distinct().toList();
    if (states.size() == 1) {
      notes.remark(
          "state-assumed",
          at,
          "`"
              + ingredient.id()
              + "` is taken as "
              + first
              + ", the one state its mass is known for");
      return row.of(unit);
    }
    notes.estimate(
        "state-assumed",
        at,
        "`"
            + ingredient.id()
            + "` is taken as "
            + first
            + "; its mass differs by state: "
            + String.join(", ", states));
    double low = all.stream().mapToDouble(d -> d.spread().low()).min().orElseThrow();
    double high = all.stream().mapToDouble(d -> d.spread().high()).max().orElseThrow();
    return new Spread(low * unit.factor(), row.of(unit).typical(), high * unit.factor());
  }

  /** The row weighed with the measure that is asked for, else with a cup, else the first. */
  private static StateDensity best(List<StateDensity> rows, Unit unit) {
    for (String measure : List.of(unit.symbol(), "cup")) {
      for (StateDensity row : rows) {
        if (measure.equals(row.measure())) {
          return row;
        }
      }
    }
    return rows.get(0);
  }

  private Spread piece(String piece, Ingredient ingredient, @Nullable String state) {
    List<PieceMass> rows =
        ingredient.pieces().stream().filter(p -> p.piece().equals(piece)).toList();
    if (rows.isEmpty()) {
      if (piece.equals(PieceMass.EACH) && ingredient.pieceMass() != null) {
        cite(ingredient, "pieceMass");
        return Spread.exactly(ingredient.pieceMass().grams());
      }
      throw refused(
          FaultCode.NO_PIECE_MASS,
          ingredient.id(),
          pieces(ingredient),
          "no mass of one "
              + piece
              + " of `"
              + ingredient.id()
              + "` is known; "
              + pieces(ingredient));
    }
    PieceMass row = piece(rows, ingredient, state);
    cite(
        "pieces",
        ingredient.id() + "/" + piece + "/" + (row.state() == null ? "" : row.state()),
        ingredient,
        row.source());
    return row.spread();
  }

  private PieceMass piece(List<PieceMass> rows, Ingredient ingredient, @Nullable String state) {
    Function<@Nullable String, @Nullable PieceMass> find =
        wanted -> {
          for (PieceMass row : rows) {
            if (wanted == null ? row.state() == null : wanted.equals(row.state())) {
              return row;
            }
          }
          return null;
        };
    @Nullable PieceMass exact = state == null ? null : find.apply(state);
    @Nullable PieceMass any = exact == null ? find.apply(null) : exact;
    if (any != null) {
      remarkOnSize(any, rows, ingredient);
      return any;
    }
    PieceMass first = rows.get(0);
    notes.estimate(
        "state-assumed",
        at,
        "a "
            + first.piece()
            + " of `"
            + ingredient.id()
            + "` is taken as "
            + first.state()
            + "; its mass differs by size or state");
    return first;
  }

  /** A bare egg is a large one: nobody may think that the size went unseen. */
  private void remarkOnSize(PieceMass taken, List<PieceMass> rows, Ingredient ingredient) {
    TreeSet<String> sizes = new TreeSet<>();
    String size = "";
    for (PieceMass row : rows) {
      if (row.state() != null) {
        sizes.add(row.state());
        size = row.typical().equals(taken.typical()) ? row.state() + ", " : size;
      }
    }
    if (taken.state() == null && !sizes.isEmpty()) {
      notes.remark(
          "size-assumed",
          at,
          "one `"
              + ingredient.id()
              + "` is taken as "
              + size
              + taken.typical()
              + "; known are "
              + String.join(", ", sizes));
    }
  }

  private void cite(StateDensity row, Ingredient ingredient) {
    String measure = row.measure() == null ? "" : row.measure();
    cite(
        "densities", ingredient.id() + "/" + row.state() + "/" + measure, ingredient, row.source());
  }

  /** Cites the built-in row, or the shop's own document where it says something else. */
  private void cite(String table, String key, Ingredient ingredient, String source) {
    Table built = table.equals("pieces") ? IngredientTables.PIECES : IngredientTables.DENSITIES;
    @Nullable Row row = built.row(key);
    if (row != null && source.equals(row.source() + ", " + row.text("locator"))) {
      notes.cite(row, cited);
      return;
    }
    notes.cite("ingredients", ingredient.id(), source, null, null, cited);
  }

  private void cite(Ingredient ingredient, String field) {
    String source =
        ingredient.source() == null ? "the ingredient's own document" : ingredient.source();
    notes.cite("ingredients", ingredient.id() + "/" + field, source, null, null, cited);
  }

  private static String pieces(Ingredient ingredient) {
    List<String> known = ingredient.pieces().stream().map(PieceMass::piece).distinct().toList();
    return known.isEmpty()
        ? "give a mass"
        : "known are " + String.join(", ", known) + ", or give a mass";
  }

  private static Refusal unknownState(String state, Ingredient ingredient, List<String> states) {
    String known = String.join(", ", new TreeSet<>(states));
    return refused(
        FaultCode.UNKNOWN_STATE,
        state,
        known,
        "the mass of `"
            + ingredient.id()
            + "` is not known as `"
            + state
            + "`; known are "
            + known);
  }

  private static Refusal refused(FaultCode code, String given, String allowed, String message) {
    return new Refusal(new Fault(code, "", given, allowed, message));
  }
}
