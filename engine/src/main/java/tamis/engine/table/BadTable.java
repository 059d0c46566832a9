package tamis.engine.table;

/** A table that cannot be used; it names file, line and column. */
public final class BadTable extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public BadTable(String table, int line, String column, String message) {
    super(table + ", line " + line + ", column " + column + ": " + message);
  }
}
