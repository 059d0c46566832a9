package tamis.engine.quantity;

import org.jspecify.annotations.Nullable;

/**
 * A unit that an answer is wanted in.
 *
 * @param name as {@link Units} keeps it
 */
public record UnitName(String name) {
  /**
   * @throws tamis.engine.fault.Refusal {@code unknown-unit}, with a suggestion
   */
  public static UnitName parse(String text) {
    String given = text.strip();
    @Nullable String name = Units.standard().name(given);
    if (name == null) {
      Units.standard().dimension(given); // refuses, with a suggestion
      return new UnitName(given);
    }
    return new UnitName(name);
  }

  public Dimension dimension() {
    return Units.standard().dimension(name);
  }

  @Override
  public String toString() {
    return name;
  }
}
