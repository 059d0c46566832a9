package tamis.api.plugin;

/** A plugin cannot be used; the message says why and what to do. The others still load. */
final class UnusablePlugin extends RuntimeException {
  private static final long serialVersionUID = 1L;

  UnusablePlugin(String message) {
    super(message);
  }

  /** With what only the log may tell: callers never see the names of classes. */
  UnusablePlugin(String message, Throwable detail) {
    super(message, detail);
  }
}
