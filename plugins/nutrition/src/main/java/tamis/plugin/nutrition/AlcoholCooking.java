package tamis.plugin.nutrition;

import java.util.Locale;

/** How something with alcohol in it is cooked. */
public enum AlcoholCooking {
  BOILING_OFF_HEAT,
  FLAMED,
  OVERNIGHT,
  BAKED_25_MIN,
  COOKED_15_MIN,
  COOKED_30_MIN,
  COOKED_1_H,
  COOKED_1_H_30,
  COOKED_2_H,
  COOKED_2_H_30;

  @Override
  public String toString() {
    return name().toLowerCase(Locale.ROOT).replace('_', '-');
  }
}
