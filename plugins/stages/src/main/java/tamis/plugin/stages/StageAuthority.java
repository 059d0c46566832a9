package tamis.plugin.stages;

import java.util.Locale;

/** Whose table of stages is followed; they disagree by a few degrees. */
public enum StageAuthority {
  /** A widely republished table of confectioners, with the part of sugar at each stage. */
  CONFECTIONERY,
  /** A textbook of food science. */
  FOOD_SCIENCE,
  /** The state extension services of the USA. */
  US_EXTENSION;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
