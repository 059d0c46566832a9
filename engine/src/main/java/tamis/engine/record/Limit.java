package tamis.engine.record;

/** Counts that an operator may set; {@link Limits} holds the number in force. */
public enum Limit {
  /** No limit but that of the body. */
  NONE(Integer.MAX_VALUE),
  LINES(2_000),
  ORDER_LINES(10_000),
  READINGS(10_000);

  private final int usual;

  Limit(int usual) {
    this.usual = usual;
  }

  public int usual() {
    return usual;
  }
}
