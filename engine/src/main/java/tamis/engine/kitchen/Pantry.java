package tamis.engine.kitchen;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Expansion;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Larder;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.pan.PanRef;
import tamis.engine.pan.Pans;
import tamis.engine.price.PriceList;
import tamis.engine.quantity.Units;
import tamis.engine.record.Limits;
import tamis.engine.record.Nearest;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Reference;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Sources;
import tamis.engine.table.Table;
import tamis.engine.thermal.ThermalProperties;
import tamis.engine.trial.Trial;

/** The kitchen over a shelf of documents, the built-in tables and the plugins that are loaded. */
public final class Pantry implements Kitchen, Larder {
  private static final int MOST_CALLS_DEEP = 16;

  private final Shelf shelf;
  private final Fittings fittings;
  private final int depth;

  /**
   * What does not change while the program runs.
   *
   * @param calculations by name
   * @param tables by name, of the engine and of all plugins; read when the first is asked for
   * @param limits how much is read and expanded
   * @param calculator how calculations are run that calculations call
   */
  public record Fittings(
      Map<String, Calculation<?, ?>> calculations,
      Supplier<Map<String, Table>> tables,
      Limits limits,
      Calculator calculator) {
    public Fittings {
      calculations = Map.copyOf(calculations);
    }

    /** The engine's own tables and these plugins, with the usual limits. */
    public static Fittings of(List<? extends Plugin> plugins) {
      Map<String, Calculation<?, ?>> calculations = new HashMap<>();
      Map<String, Table> tables = new HashMap<>();
      builtInTables().forEach(table -> tables.put(table.name(), table));
      for (Plugin plugin : plugins) {
        plugin.calculations().forEach(c -> calculations.put(c.name(), c));
        plugin.tables().forEach(t -> tables.put(t.name(), t));
      }
      return new Fittings(calculations, () -> tables, Limits.usual(), Calculator.DIRECT);
    }
  }

  public Pantry(Shelf shelf, Fittings fittings) {
    this(shelf, fittings, 0);
  }

  private Pantry(Shelf shelf, Fittings fittings, int depth) {
    this.shelf = shelf;
    this.fittings = fittings;
    this.depth = depth;
  }

  /** The tables that come with the engine. */
  public static List<Table> builtInTables() {
    List<Table> tables = new ArrayList<>(IngredientTables.all());
    tables.add(Units.standard().table());
    tables.add(Pans.standard().table());
    tables.add(Sources.table());
    tables.add(ThermalProperties.TABLE);
    return List.copyOf(tables);
  }

  @Override
  public long revision() {
    return shelf.revision();
  }

  @Override
  public @Nullable Instant written() {
    return shelf.written();
  }

  @Override
  public Formula formula(FormulaRef reference) {
    if (reference.object() != null) {
      return reference.object();
    }
    String id = String.valueOf(reference.id());
    @Nullable Formula formula = shelf.formula(id, reference.revision());
    if (formula != null) {
      return formula;
    }
    boolean other = reference.revision() != null && shelf.formula(id, null) != null;
    String why =
        other
            ? "formula `" + id + "` has no revision " + reference.revision()
            : "no formula `" + id + "`" + Nearest.suggestion(id, shelf.formulaIdsNear(id));
    throw new Refusal(new Fault(FaultCode.UNKNOWN_FORMULA, "", reference.toString(), null, why));
  }

  @Override
  public Ingredient ingredient(IngredientRef reference) {
    String folded = reference.folded();
    @Nullable Ingredient own = shelf.ingredient(folded);
    if (own != null) {
      return own;
    }
    ReferenceIngredients built = ReferenceIngredients.standard();
    @Nullable Ingredient byId = built.byId(folded);
    if (byId != null) {
      return byId;
    }
    Set<String> ids = new LinkedHashSet<>(shelf.ingredientsNamed(folded));
    if (ids.isEmpty()) {
      ids.addAll(built.named(folded));
    }
    if (ids.size() == 1) {
      return ingredient(new IngredientRef(ids.iterator().next()));
    }
    throw ids.isEmpty() ? unknown(reference) : ambiguous(reference, ids);
  }

  private static Refusal unknown(IngredientRef reference) {
    String near = Nearest.suggestion(reference.folded(), ReferenceIngredients.standard().names());
    return new Refusal(
        new Fault(
            FaultCode.UNKNOWN_INGREDIENT,
            "",
            reference.name(),
            null,
            "no ingredient `" + reference.name() + "`" + near));
  }

  private static Refusal ambiguous(IngredientRef reference, Set<String> ids) {
    String allowed = String.join(", ", ids);
    return new Refusal(
        new Fault(
            FaultCode.AMBIGUOUS_INGREDIENT,
            "",
            reference.name(),
            allowed,
            "`"
                + reference.name()
                + "` means different foods in different places: say "
                + String.join(" or ", ids)));
  }

  @Override
  public Table table(String name) {
    @Nullable Table table = fittings.tables().get().get(name);
    if (table == null) {
      throw Refusal.of(
          FaultCode.UNKNOWN_TABLE,
          "no table `" + name + "`" + Nearest.suggestion(name, fittings.tables().get().keySet()));
    }
    return table;
  }

  @Override
  public PriceList prices() {
    return shelf.prices();
  }

  @Override
  public Trial trial(String id) {
    @Nullable Trial trial = shelf.trial(id);
    if (trial == null) {
      throw new Refusal(new Fault(FaultCode.UNKNOWN_TRIAL, "", id, null, "no trial `" + id + "`"));
    }
    return trial;
  }

  @Override
  public List<Trial> trialsOf(String formula) {
    return shelf.trialsOf(formula);
  }

  @Override
  public Batch batch(FormulaRef formula, @Nullable To to) {
    return Expansion.expand(this, fittings.limits(), formula, to);
  }

  /**
   * Refuses a document that could not be made at any size.
   *
   * @throws Refusal with pointers relative to the document
   */
  public void check(Formula document) {
    Expansion.check(this, fittings.limits(), document);
  }

  @Override
  public void check(Reference reference) {
    if (reference instanceof IngredientRef ingredient) {
      ingredient(ingredient);
    } else if (reference instanceof FormulaRef formula) {
      formula(formula);
    } else if (reference instanceof PanRef pan) {
      Pans.standard().check(pan);
    }
  }

  @Override
  public Answer<?> calculate(String name, Map<String, ?> input) {
    @Nullable Calculation<?, ?> calculation = fittings.calculations().get(name);
    if (calculation == null) {
      throw Refusal.of(
          FaultCode.UNKNOWN_CALCULATION,
          "no calculation `"
              + name
              + "`"
              + Nearest.suggestion(name, fittings.calculations().keySet()));
    }
    if (depth >= MOST_CALLS_DEEP) {
      throw Refusal.of(
          FaultCode.TOO_DEEP,
          "calculations call each other more than " + MOST_CALLS_DEEP + " deep, at `" + name + "`");
    }
    return run(calculation, input);
  }

  private <I extends Record, R extends Record> Answer<R> run(
      Calculation<I, R> calculation, Map<String, ?> input) {
    I read = new RecordReader(this, fittings.limits()).read(calculation.input(), input);
    return fittings.calculator().run(calculation, read, new Pantry(shelf, fittings, depth + 1));
  }
}
