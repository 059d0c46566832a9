package tamis.api.command;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** What an operator may set: by an option of {@code serve}, else by the environment. */
public enum Setting {
  HOST("127.0.0.1", "Address to serve at"),
  PORT(7070, 0, 65_535, "Port to serve at; 0 takes a free one"),
  DATA("tamis-data", "Directory of the shop's own documents, made if it is not there"),
  DB("", "PostgreSQL database that holds them instead: jdbc:postgresql://HOST/NAME"),
  DB_USER("", "User of that database"),
  DB_PASSWORD("", "Password of that user"),
  DEMO("off", "Whether the demo data is loaded into an empty store: on or off"),
  PLUGINS("", "Directory whose jars are loaded as plugins"),
  LOG("on", "Whether each request is told on stderr: on or off"),
  ORIGINS("", "Origins whose pages may call, with commas between; * for all"),
  BODY_BYTES(1_048_576, 1, 1 << 30, "Bytes of a body that are read"),
  LINE_BYTES(1_048_576, 1, 1 << 30, "Bytes of a line of a stream that are read"),
  QUERY_BYTES(8_192, 1, 1 << 20, "Bytes of a query that are read"),
  NESTING(32, 1, 1_000, "How deep JSON may nest"),
  DIGITS(40, 1, 1_000, "Digits that a number may be written with"),
  LINES(2_000, 1, 1_000_000, "Lines of a formula"),
  ORDER_LINES(10_000, 1, 1_000_000, "Lines of an order"),
  READINGS(10_000, 1, 1_000_000, "Readings of a stage"),
  EXPANDED_LINES(20_000, 1, 10_000_000, "Lines of a batch over all its parts"),
  FORMULA_DEPTH(64, 1, 1_000, "How deep formulas may nest"),
  CALCULATION_SECONDS(10, 1, 3_600, "Time for a calculation of a dropped-in plugin"),
  SENDER_SECONDS(20, 1, 3_600, "Time for a caller to send a request, and to stay silent"),
  CACHE_BYTES(67_108_864, 0, Integer.MAX_VALUE, "Bytes of answers that are kept");

  /** What begins the name of every setting in the environment. */
  static final String PREFIX = "TAMIS_";

  private final String usual;
  private final String meaning;
  private final @Nullable Integer least;
  private final int most;

  Setting(String usual, String meaning) {
    this.usual = usual;
    this.meaning = meaning;
    this.least = null;
    this.most = 0;
  }

  Setting(int usual, int least, int most, String meaning) {
    this.usual = Integer.toString(usual);
    this.meaning = meaning;
    this.least = least;
    this.most = most;
  }

  /** Its name in the environment. */
  public String variable() {
    return PREFIX + name();
  }

  /** Its name as an option. */
  public String option() {
    return "--" + name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  /** What holds when nothing is said. */
  public String usual() {
    return usual;
  }

  public String meaning() {
    return meaning;
  }

  /**
   * The number that {@code text} sets.
   *
   * @throws WrongUse if it is none, or out of bounds
   */
  int number(String text, String saidBy) {
    int lowest = least == null ? 0 : least;
    if (text.matches("[0-9]{1,10}")) {
      long number = Long.parseLong(text);
      if (number >= lowest && number <= most) {
        return (int) number;
      }
    }
    throw new WrongUse(
        saidBy + " must be a whole number from " + lowest + " to " + most + ", was " + text);
  }
}
