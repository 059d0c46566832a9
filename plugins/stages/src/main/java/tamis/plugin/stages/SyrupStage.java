package tamis.plugin.stages;

import java.util.Locale;

/** How far sugar is cooked, as a drop in cold water shows it. */
public enum SyrupStage {
  THREAD,
  SOFT_BALL,
  FIRM_BALL,
  HARD_BALL,
  SOFT_CRACK,
  HARD_CRACK,
  CLEAR_LIQUID,
  CARAMEL_LIGHT,
  CARAMEL_DARK;

  /** From here on sugar breaks down: colour follows the temperature, not the water left in it. */
  boolean isMelt() {
    return compareTo(CLEAR_LIQUID) >= 0;
  }

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
