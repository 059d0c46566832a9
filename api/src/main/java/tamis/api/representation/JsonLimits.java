package tamis.api.representation;

/**
 * How much JSON is read.
 *
 * @param depth how deep objects and lists may nest
 * @param digits how many digits a number may be written with
 */
public record JsonLimits(int depth, int digits) {
  public static JsonLimits usual() {
    return new JsonLimits(32, 40);
  }
}
