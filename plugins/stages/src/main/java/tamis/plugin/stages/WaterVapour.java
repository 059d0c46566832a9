package tamis.plugin.stages;

/**
 * Where water boils: the saturation line of IAPWS-IF97 (region 4, equations 30 and 31) and the
 * pressure of the standard atmosphere, ISO 2533, at a height above the sea.
 */
final class WaterVapour {
  static final double SEA_LEVEL_PASCALS = 101_325;
  static final double ZERO_CELSIUS_IN_KELVIN = 273.15;

  /** n1 to n10 of IAPWS R7-97(2012), table 34. */
  private static final double[] N = {
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3
  };

  private static final double PASCALS_PER_MEGAPASCAL = 1e6;

  /** ISO 2533: temperature at sea level, its fall a metre, and g·M/(R·lapse). */
  private static final double SEA_LEVEL_KELVIN = 288.15;

  private static final double LAPSE = 0.0065;
  private static final double EXPONENT = 5.255876;

  private WaterVapour() {}

  /** Pressure at which water of this temperature boils; 0 °C to 350 °C. */
  static double pressure(double celsius) {
    double kelvin = celsius + ZERO_CELSIUS_IN_KELVIN;
    double t = kelvin + N[8] / (kelvin - N[9]);
    double a = (t + N[0]) * t + N[1];
    double b = (N[2] * t + N[3]) * t + N[4];
    double c = (N[5] * t + N[6]) * t + N[7];
    double root = 2 * c / (-b + Math.sqrt(b * b - 4 * a * c));
    return root * root * root * root * PASCALS_PER_MEGAPASCAL;
  }

  /** Temperature in °C at which water boils at this pressure. */
  static double boilingPoint(double pascals) {
    double beta = Math.sqrt(Math.sqrt(pascals / PASCALS_PER_MEGAPASCAL));
    double e = (beta + N[2]) * beta + N[5];
    double f = (N[0] * beta + N[3]) * beta + N[6];
    double g = (N[1] * beta + N[4]) * beta + N[7];
    double d = 2 * g / (-f - Math.sqrt(f * f - 4 * e * g));
    double sum = N[9] + d;
    double kelvin = (sum - Math.sqrt(sum * sum - 4 * (N[8] + N[9] * d))) / 2;
    return kelvin - ZERO_CELSIUS_IN_KELVIN;
  }

  /** Pressure of the standard atmosphere. */
  static double atmosphere(double metres) {
    return SEA_LEVEL_PASCALS * Math.pow(1 - LAPSE * metres / SEA_LEVEL_KELVIN, EXPONENT);
  }
}
