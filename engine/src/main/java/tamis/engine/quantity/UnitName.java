package tamis.engine.quantity;

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
    return new UnitName(Units.standard().known(Cursor.spaced(text)));
  }

  public Dimension dimension() {
    return Units.standard().dimension(name);
  }

  @Override
  public String toString() {
    return name;
  }
}
