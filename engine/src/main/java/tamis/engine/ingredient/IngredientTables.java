package tamis.engine.ingredient;

import java.util.List;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** The tables that the built-in ingredients are put together from. */
public final class IngredientTables {
  public static final Table INGREDIENTS =
      read(
          "ingredients",
          "Ingredients with the composition of 100 g of the edible part",
          "ingredient");
  public static final Table NAMES =
      TableReader.plain(
          IngredientTables.class,
          "/tamis/engine/names.csv",
          "Names of ingredients by language",
          List.of("language", "name", "ingredient"));
  public static final Table DENSITIES =
      read(
          "densities",
          "Mass of a millilitre by state and measure",
          "ingredient",
          "state",
          "measure");
  public static final Table PIECES =
      read("pieces", "Masses of pieces", "ingredient", "piece", "state");
  public static final Table ALLERGENS =
      read("allergens", "Allergens of ingredients", "ingredient", "allergen", "species", "level");
  public static final Table PARTS =
      read("composition-parts", "What compound ingredients consist of", "ingredient", "order");
  public static final Table WINDOWS =
      read("windows", "Temperatures at which ingredients work", "ingredient", "window");
  public static final Table BY_PRODUCTS =
      read(
          "by-products",
          "What is left over of eggs and fruit used in part",
          "used",
          "whole",
          "left");
  public static final Table EGGS = read("eggs", "Eggs by size class", "ingredient");
  public static final Table GAS_MARKS = read("gas-marks", "Oven marks and temperatures", "mark");

  private IngredientTables() {}

  /** All of them. */
  public static List<Table> all() {
    return List.of(
        INGREDIENTS,
        NAMES,
        DENSITIES,
        PIECES,
        ALLERGENS,
        PARTS,
        WINDOWS,
        BY_PRODUCTS,
        EGGS,
        GAS_MARKS);
  }

  private static Table read(String name, String title, String... key) {
    return TableReader.read(
        IngredientTables.class, "/tamis/engine/" + name + ".csv", title, List.of(key));
  }
}
