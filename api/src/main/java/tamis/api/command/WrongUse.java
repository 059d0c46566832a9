package tamis.api.command;

/** The program was started in a way that cannot be meant; told as one line, exit 2. */
public final class WrongUse extends RuntimeException {
  private static final long serialVersionUID = 1L;

  public WrongUse(String message) {
    super(message);
  }
}
