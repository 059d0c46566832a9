package tamis.api.stream;

/** A file cannot be used as was asked; told as one line. */
public final class Unusable extends RuntimeException {
  private static final long serialVersionUID = 1L;

  Unusable(String message) {
    super(message);
  }
}
