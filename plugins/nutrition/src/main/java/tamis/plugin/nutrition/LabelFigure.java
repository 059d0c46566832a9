package tamis.plugin.nutrition;

import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Nutrient;

/** A figure of a label. */
public enum LabelFigure {
  ENERGY_KCAL(Nutrient.ENERGY_KCAL),
  ENERGY_KJ(Nutrient.ENERGY_KJ),
  FAT(Nutrient.FAT),
  SATURATES(Nutrient.SATURATES),
  MONOUNSATURATES(Nutrient.MONOUNSATURATES),
  POLYUNSATURATES(Nutrient.POLYUNSATURATES),
  TRANS(Nutrient.TRANS),
  CHOLESTEROL(Nutrient.CHOLESTEROL),
  CARBOHYDRATE(Nutrient.CARBOHYDRATE),
  FIBRE(Nutrient.FIBRE),
  SUGARS(Nutrient.SUGARS),
  ADDED_SUGARS(Nutrient.ADDED_SUGARS),
  POLYOLS(Nutrient.POLYOLS),
  STARCH(Nutrient.STARCH),
  PROTEIN(Nutrient.PROTEIN),
  SALT(Nutrient.SODIUM, "salt"),
  SODIUM(Nutrient.SODIUM),
  VITAMIN_D(Nutrient.VITAMIN_D),
  CALCIUM(Nutrient.CALCIUM),
  IRON(Nutrient.IRON),
  POTASSIUM(Nutrient.POTASSIUM),
  VITAMIN_A(Nutrient.VITAMIN_A),
  VITAMIN_C(Nutrient.VITAMIN_C),
  VITAMIN_E(Nutrient.VITAMIN_E),
  VITAMIN_K(Nutrient.VITAMIN_K),
  THIAMIN(Nutrient.THIAMIN),
  RIBOFLAVIN(Nutrient.RIBOFLAVIN),
  NIACIN(Nutrient.NIACIN),
  VITAMIN_B6(Nutrient.VITAMIN_B6),
  FOLATE(Nutrient.FOLATE),
  VITAMIN_B12(Nutrient.VITAMIN_B12),
  BIOTIN(Nutrient.BIOTIN),
  PANTOTHENIC_ACID(Nutrient.PANTOTHENIC_ACID),
  PHOSPHORUS(Nutrient.PHOSPHORUS),
  IODINE(Nutrient.IODINE),
  MAGNESIUM(Nutrient.MAGNESIUM),
  ZINC(Nutrient.ZINC),
  SELENIUM(Nutrient.SELENIUM),
  COPPER(Nutrient.COPPER),
  MANGANESE(Nutrient.MANGANESE),
  CHROMIUM(Nutrient.CHROMIUM),
  MOLYBDENUM(Nutrient.MOLYBDENUM),
  CHLORIDE(Nutrient.CHLORIDE),
  CHOLINE(Nutrient.CHOLINE),
  WATER(Nutrient.WATER),
  ASH(Nutrient.ASH),
  ALCOHOL(Nutrient.ALCOHOL),
  CAFFEINE(Nutrient.CAFFEINE);

  /** EU 1169/2011, Annex I, point 11: salt is sodium times 2.5. */
  private static final double SALT_OF_SODIUM = 2.5;

  private static final double MILLIGRAMS = 1_000;

  private final Nutrient nutrient;
  private final String text;

  LabelFigure(Nutrient nutrient) {
    this(nutrient, nutrient.toString());
  }

  LabelFigure(Nutrient nutrient, String text) {
    this.nutrient = nutrient;
    this.text = text;
  }

  /** The nutrient it is worked out from. */
  Nutrient nutrient() {
    return nutrient;
  }

  /** The figure from the amount of its nutrient. */
  double of(double amount) {
    return this == SALT ? amount * SALT_OF_SODIUM / MILLIGRAMS : amount;
  }

  /** Whether it has a name of its own in {@link Figures}; the rest stands under its others. */
  boolean isCommon() {
    return compareTo(POTASSIUM) <= 0 || compareTo(WATER) >= 0;
  }

  /** The figure of this name, or null. */
  static @Nullable LabelFigure named(String text) {
    for (LabelFigure figure : values()) {
      if (figure.text.equals(text)) {
        return figure;
      }
    }
    return null;
  }

  @Override
  public String toString() {
    return text;
  }
}
