package tamis.api.plugin;

/**
 * Two plugins offer a calculation of one name: nobody can say which is meant, so nothing starts.
 */
public final class ClashingPlugins extends RuntimeException {
  private static final long serialVersionUID = 1L;

  ClashingPlugins(String message) {
    super(message);
  }
}
