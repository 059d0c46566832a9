package tamis.api.store;

/** A real database with a user who must give a password. */
public final class GuardedDatabase {
  public static final String USER = PostgresForTests.LOCKED_USER;

  private GuardedDatabase() {}

  public static String url() {
    return PostgresForTests.url();
  }
}
