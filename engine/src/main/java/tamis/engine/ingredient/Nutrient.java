package tamis.engine.ingredient;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What a food is made of, as composition tables count it. Each with its unit and table column. */
public enum Nutrient {
  WATER("water", "g", "water_g"),
  ENERGY_KCAL("energyKcal", "kcal", "energy_kcal"),
  ENERGY_KJ("energyKj", "kJ", "energy_kj"),
  PROTEIN("protein", "g", "protein_g"),
  FAT("fat", "g", "fat_g"),
  SATURATES("saturates", "g", "saturates_g"),
  MONOUNSATURATES("monounsaturates", "g", "mono_g"),
  POLYUNSATURATES("polyunsaturates", "g", "poly_g"),
  TRANS("trans", "g", "trans_g"),
  CHOLESTEROL("cholesterolMg", "mg", "cholesterol_mg"),
  /** By difference: it includes fibre. */
  CARBOHYDRATE("carbohydrate", "g", "carbohydrate_g"),
  FIBRE("fibre", "g", "fibre_g"),
  SUGARS("sugars", "g", "sugars_g"),
  ADDED_SUGARS("addedSugars", "g", "added_sugars_g"),
  POLYOLS("polyols", "g", "polyols_g"),
  STARCH("starch", "g", "starch_g"),
  ASH("ash", "g", "ash_g"),
  ALCOHOL("alcohol", "g", "alcohol_g"),
  CALCIUM("calciumMg", "mg", "calcium_mg"),
  IRON("ironMg", "mg", "iron_mg"),
  POTASSIUM("potassiumMg", "mg", "potassium_mg"),
  SODIUM("sodiumMg", "mg", "sodium_mg"),
  VITAMIN_D("vitaminDUg", "µg", "vitamin_d_ug"),
  CAFFEINE("caffeineMg", "mg", "caffeine_mg"),
  SUCROSE("sucrose", "g", "sucrose_g"),
  GLUCOSE("glucose", "g", "glucose_g"),
  FRUCTOSE("fructose", "g", "fructose_g"),
  LACTOSE("lactose", "g", "lactose_g"),
  MALTOSE("maltose", "g", "maltose_g"),
  GALACTOSE("galactose", "g", "galactose_g"),
  THEOBROMINE("theobromineMg", "mg", "theobromine_mg"),
  VITAMIN_A("vitaminAUg", "µg", "vitamin_a_ug_rae"),
  VITAMIN_C("vitaminCMg", "mg", "vitamin_c_mg"),
  VITAMIN_E("vitaminEMg", "mg", "vitamin_e_mg"),
  VITAMIN_K("vitaminKUg", "µg", "vitamin_k_ug"),
  THIAMIN("thiaminMg", "mg", "thiamin_mg"),
  RIBOFLAVIN("riboflavinMg", "mg", "riboflavin_mg"),
  NIACIN("niacinMg", "mg", "niacin_mg"),
  VITAMIN_B6("vitaminB6Mg", "mg", "vitamin_b6_mg"),
  FOLATE("folateUg", "µg", "folate_ug_dfe"),
  VITAMIN_B12("vitaminB12Ug", "µg", "vitamin_b12_ug"),
  BIOTIN("biotinUg", "µg", "biotin_ug"),
  PANTOTHENIC_ACID("pantothenicAcidMg", "mg", "pantothenic_acid_mg"),
  PHOSPHORUS("phosphorusMg", "mg", "phosphorus_mg"),
  IODINE("iodineUg", "µg", "iodine_ug"),
  MAGNESIUM("magnesiumMg", "mg", "magnesium_mg"),
  ZINC("zincMg", "mg", "zinc_mg"),
  SELENIUM("seleniumUg", "µg", "selenium_ug"),
  COPPER("copperMg", "mg", "copper_mg"),
  MANGANESE("manganeseMg", "mg", "manganese_mg"),
  CHROMIUM("chromiumUg", "µg", "chromium_ug"),
  MOLYBDENUM("molybdenumUg", "µg", "molybdenum_ug"),
  CHLORIDE("chlorideMg", "mg", "chloride_mg"),
  CHOLINE("cholineMg", "mg", "choline_mg");

  private final String text;
  private final String unit;
  private final String column;

  Nutrient(String text, String unit, String column) {
    this.text = text;
    this.unit = unit;
    this.column = column;
  }

  /** g, mg, µg, kcal or kJ. */
  public String unit() {
    return unit;
  }

  /** The nutrient that this one is a part of and cannot exceed, or null. */
  public @Nullable Nutrient partOf() {
    return switch (this) {
      case SATURATES, MONOUNSATURATES, POLYUNSATURATES, TRANS -> FAT;
      case FIBRE, SUGARS, POLYOLS, STARCH -> CARBOHYDRATE;
      case ADDED_SUGARS, SUCROSE, GLUCOSE, FRUCTOSE, LACTOSE, MALTOSE, GALACTOSE -> SUGARS;
      default -> null;
    };
  }

  /** More than this cannot be in 100 g: all of it, or a little more energy than pure fat has. */
  double mostIn100g() {
    return switch (unit) {
      case "kcal" -> 1_000;
      case "kJ" -> 4_200;
      case "g" -> 100;
      case "mg" -> 100_000;
      default -> 100_000_000;
    };
  }

  String column() {
    return column;
  }

  /** The name in documents. */
  @Override
  public String toString() {
    return text;
  }

  /** The name in sentences. */
  public String words() {
    return name().toLowerCase(Locale.ROOT).replace('_', ' ');
  }
}
