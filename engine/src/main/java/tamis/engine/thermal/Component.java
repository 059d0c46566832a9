package tamis.engine.thermal;

import java.util.Locale;

/** The parts of a food that heat is counted by. */
enum Component {
  WATER,
  PROTEIN,
  FAT,
  CARBOHYDRATE,
  FIBRE,
  ASH;

  /** Its name in the table. */
  String key() {
    return name().toLowerCase(Locale.ROOT);
  }
}
