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
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Density;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Temperature;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;

/** The built-in ingredients, put together from the tables of this package. */
public final class ReferenceIngredients {
  private static final ReferenceIngredients STANDARD = new ReferenceIngredients();

  private final Map<String, Ingredient> byId = new LinkedHashMap<>();
  private final Map<String, Set<String>> idsByName = new HashMap<>();

  private ReferenceIngredients() {
    Map<String, List<Row>> names = grouped(IngredientTables.NAMES);
    Map<String, List<Row>> densities = grouped(IngredientTables.DENSITIES);
    Map<String, List<Row>> pieces = grouped(IngredientTables.PIECES);
    Map<String, List<Row>> allergens = grouped(IngredientTables.ALLERGENS);
    Map<String, List<Row>> parts = grouped(IngredientTables.PARTS);
    Map<String, List<Row>> windows = grouped(IngredientTables.WINDOWS);
    for (Row row : IngredientTables.INGREDIENTS.rows()) {
      String id = row.text("ingredient");
      List<PieceMass> masses =
          pieces.getOrDefault(id, List.of()).stream().map(ReferenceIngredients::piece).toList();
      byId.put(
          id,
          new Ingredient(
              id,
              names(row, names.getOrDefault(id, List.of())),
              densities.getOrDefault(id, List.of()).stream()
                  .map(ReferenceIngredients::density)
                  .toList(),
              each(masses),
              masses,
              composition(row),
              allergens(allergens.getOrDefault(id, List.of()), "contains"),
              allergens(allergens.getOrDefault(id, List.of()), "may"),
              parts.getOrDefault(id, List.of()).stream().map(ReferenceIngredients::part).toList(),
              row.yes("flour"),
              row.yes("sensitive"),
              row.text("kind"),
              windows.getOrDefault(id, List.of()).stream()
                  .map(ReferenceIngredients::window)
                  .toList(),
              null,
              row.source() + ", " + row.text("locator")));
    }
    byId.values().forEach(this::index);
  }

  public static ReferenceIngredients standard() {
    return STANDARD;
  }

  /** The ingredient with this id, or null. */
  public @Nullable Ingredient byId(String id) {
    return byId.get(id);
  }

  /** Ids of all ingredients that go by this name, folded as {@link IngredientRef#folded()}. */
  public Set<String> named(String folded) {
    return idsByName.getOrDefault(folded, Set.of());
  }

  public Collection<Ingredient> all() {
    return byId.values();
  }

  /** Every id and name, for suggestions. */
  public Collection<String> names() {
    return idsByName.keySet();
  }

  private void index(Ingredient ingredient) {
    idsByName.computeIfAbsent(ingredient.id(), n -> new LinkedHashSet<>()).add(ingredient.id());
    ingredient
        .names()
        .values()
        .forEach(
            list ->
                list.forEach(
                    name ->
                        idsByName
                            .computeIfAbsent(IngredientRef.folded(name), n -> new LinkedHashSet<>())
                            .add(ingredient.id())));
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
        row.source() + ", " + row.text("locator"));
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

  private static @Nullable Mass each(List<PieceMass> pieces) {
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
