package tamis.api.store;

/** The store cannot be opened; the message says in one line why, and what to do. */
public final class UnusableStore extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UnusableStore(String message) {
    super(message);
  }

  UnusableStore(String message, Throwable cause) {
    super(message, cause);
  }
}
