package tamis.engine.ingredient;

import java.util.ArrayList;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/**
 * The built-in ingredients, put together from the tables of this package. The names are read at
 * once, an ingredient only when it is asked for: a start needs none of them. Any number of threads.
 */
public final class ReferenceIngredients {
  private static final ReferenceIngredients STANDARD = new ReferenceIngredients();

  private final Map<String, List<Row>> names = grouped(IngredientTables.NAMES);
  private final Map<String, List<Row>> densities = grouped(IngredientTables.DENSITIES);
  private final Map<String, List<Row>> pieces = grouped(IngredientTables.PIECES);
  private final Map<String, List<Row>> allergens = grouped(IngredientTables.ALLERGENS);
  private final Map<String, List<Row>> parts = grouped(IngredientTables.PARTS);
  private final Map<String, List<Row>> windows = grouped(IngredientTables.WINDOWS);
  private final Map<String, Set<String>> idsByEnglishName = new HashMap<>();
  private final Map<String, Set<String>> idsByName = new HashMap<>();
  private final Map<String, String> assumptions = new HashMap<>();
  private final Map<String, Ingredient> made = new ConcurrentHashMap<>();

  private ReferenceIngredients() {
    for (Row row : IngredientTables.INGREDIENTS.rows()) {
      String id = row.key();
      index(idsByEnglishName, id, id);
      index(idsByEnglishName, row.text("title"), id);
    }
    for (Row row : IngredientTables.NAMES.rows()) {
      boolean english = row.text("language").startsWith("en");
      index(english ? idsByEnglishName : idsByName, row.text("name"), row.text("ingredient"));
      assume(row, english);
    }
  }

  public static ReferenceIngredients standard() {
    return STANDARD;
  }

  /** The ingredient with this id, or null. */
  public @Nullable Ingredient byId(String id) {
    @Nullable Ingredient known = made.get(id);
    if (known != null) {
      return known;
    }
    @Nullable Row row = IngredientTables.INGREDIENTS.row(id);
    return row == null ? null : made.computeIfAbsent(id, i -> ingredient(row));
  }

  /**
   * Ids of all ingredients that go by this name, folded as {@link IngredientRef#folded()}. What it
   * means in English goes before what it means in another language.
   */
  public Set<String> named(String folded) {
    @Nullable Set<String> english = idsByEnglishName.get(folded);
    return english == null ? idsByName.getOrDefault(folded, Set.of()) : english;
  }

  /**
   * What is taken for granted when an ingredient goes by this name, or null: "unsalted assumed".
   */
  public @Nullable String assumed(IngredientRef reference) {
    String name = reference.folded();
    return IngredientTables.INGREDIENTS.row(name) == null ? assumptions.get(name) : null;
  }

  /** All of them, in the order of the table. */
  public Collection<Ingredient> all() {
    List<Ingredient> all = new ArrayList<>();
    for (Row row : IngredientTables.INGREDIENTS.rows()) {
      all.add(made.computeIfAbsent(row.key(), i -> ingredient(row)));
    }
    return all;
  }

  /** Every id and name, for suggestions. */
  public Collection<String> names() {
    Set<String> names = new LinkedHashSet<>(idsByEnglishName.keySet());
    names.addAll(idsByName.keySet());
    return names;
  }

  private void assume(Row row, boolean english) {
    String name = IngredientRef.folded(row.text("name"));
    @Nullable String remark = row.textOrNull("remark");
    if (remark != null && (english || !idsByEnglishName.containsKey(name))) {
      assumptions.put(name, remark);
    }
  }

  private static void index(Map<String, Set<String>> index, String name, String id) {
    index.computeIfAbsent(IngredientRef.folded(name), n -> new LinkedHashSet<>()).add(id);
  }

  private Ingredient ingredient(Row row) {
    String id = row.key();
    List<PieceMass> masses = each(pieces, id, ReferenceIngredients::piece);
    List<Row> allergenRows = allergens.getOrDefault(id, List.of());
    return new Ingredient(
        id,
        names(row, names.getOrDefault(id, List.of())),
        each(densities, id, ReferenceIngredients::density),
        single(masses),
        masses,
        composition(row),
        allergens(allergenRows, "contains"),
        allergens(allergenRows, "may"),
        each(parts, id, ReferenceIngredients::part),
        row.yes("flour"),
        row.yes("sensitive"),
        row.text("kind"),
        each(windows, id, ReferenceIngredients::window),
        null,
        row.source() + ", " + row.text("locator"));
  }

  private static <T> List<T> each(Map<String, List<Row>> rows, String id, Function<Row, T> fact) {
    return rows.getOrDefault(id, List.of()).stream().map(fact).toList();
  }

  private static Map<String, List<Row>> grouped(Table table) {
    Map<String, List<Row>> grouped = new HashMap<>();
    for (Row row : table.rows()) {
      grouped.computeIfAbsent(row.text("ingredient"), id -> new ArrayList<>()).add(row);
    }
    for (Map.Entry<String, List<Row>> group : grouped.entrySet()) {
      if (IngredientTables.INGREDIENTS.row(group.getKey()) == null) {
        Row row = group.getValue().get(0);
        throw new BadTable(
            table.name(), row.line(), "ingredient", group.getKey() + " is not in ingredients");
      }
    }
    return grouped;
  }

  private static Map<String, List<String>> names(Row row, List<Row> names) {
    Map<String, List<String>> byLanguage = new LinkedHashMap<>();
    byLanguage.put("en", new ArrayList<>(List.of(row.text("title"))));
    names.forEach(
        name ->
            byLanguage
                .computeIfAbsent(name.text("language"), l -> new ArrayList<>())
                .add(name.text("name")));
    return byLanguage;
  }

  private static StateDensity density(Row row) {
    return new StateDensity(
        row.text("state"),
        row.textOrNull("measure"),
        Density.ofGramsPerMillilitre(row.number("low_g_per_ml")),
        Density.ofGramsPerMillilitre(row.number("typical_g_per_ml")),
        Density.ofGramsPerMillilitre(row.number("high_g_per_ml")),
        measured(row),
        row.source() + ", " + row.text("locator"));
  }

  private static @Nullable Mass measured(Row row) {
    @Nullable Double grams = row.numberOrNull("measured_grams");
    return grams == null || row.textOrNull("measure") == null ? null : Mass.ofGrams(grams);
  }

  private static PieceMass piece(Row row) {
    return new PieceMass(
        row.text("piece"),
        row.textOrNull("state"),
        Mass.ofGrams(row.number("low_g")),
        Mass.ofGrams(row.number("typical_g")),
        Mass.ofGrams(row.number("high_g")),
        row.source() + ", " + row.text("locator"));
  }

  /** What one weighs of which no size is said. */
  private static @Nullable Mass single(List<PieceMass> pieces) {
    for (PieceMass piece : pieces) {
      if (piece.piece().equals(PieceMass.EACH) && piece.state() == null) {
        return piece.typical();
      }
    }
    return null;
  }

  private static Map<Nutrient, Double> composition(Row row) {
    Map<Nutrient, Double> composition = new EnumMap<>(Nutrient.class);
    for (Nutrient nutrient : Nutrient.values()) {
      @Nullable Double value = row.numberOrNull(nutrient.column());
      if (value != null) {
        composition.put(nutrient, value);
      }
    }
    return composition;
  }

  private static List<AllergenFact> allergens(List<Row> rows, String level) {
    return rows.stream()
        .filter(row -> row.text("level").equals(level))
        .map(row -> new AllergenFact(allergen(row), row.textOrNull("species")))
        .toList();
  }

  private static Allergen allergen(Row row) {
    String name = row.text("allergen");
    try {
      return Allergen.valueOf(name.toUpperCase(Locale.ROOT).replace('-', '_'));
    } catch (IllegalArgumentException unknown) {
      throw new BadTable(row.table(), row.line(), "allergen", name + " is no allergen");
    }
  }

  private static ConsistsOf part(Row row) {
    @Nullable Double percent = row.numberOrNull("percent");
    return new ConsistsOf(row.text("part"), percent == null ? null : new Fraction(percent / 100));
  }

  private static ThermalWindow window(Row row) {
    return new ThermalWindow(
        row.text("window"),
        Temperature.ofCelsius(row.number("low_c")),
        Temperature.ofCelsius(row.number("high_c")),
        row.textOrNull("note"));
  }
}
