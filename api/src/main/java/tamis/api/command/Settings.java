package tamis.api.command;

import java.nio.file.Files;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import tamis.api.http.ServerSettings;
import tamis.engine.record.Limit;
import tamis.engine.record.Limits;
import tamis.engine.record.Nearest;

/** All settings of a start: options before environment before what is usual. */
final class Settings {
  private final Map<Setting, String> options;
  private final Map<String, String> environment;

  /**
   * @throws WrongUse if the environment holds a {@code TAMIS_} name that sets nothing
   */
  Settings(Map<Setting, String> options, Map<String, String> environment) {
    this.options = options.isEmpty() ? Map.of() : new EnumMap<>(options);
    this.environment = environment;
    var known = new TreeSet<String>();
    for (var setting : Setting.values()) {
      known.add(setting.variable());
    }
    for (var name : new TreeSet<>(environment.keySet())) {
      if (name.startsWith(Setting.PREFIX) && !known.contains(name)) {
        throw new WrongUse(name + " sets nothing" + Nearest.suggestion(name, known));
      }
    }
  }

  /** What the door is told. */
  ServerSettings server() {
    return new ServerSettings(
        text(Setting.HOST),
        number(Setting.PORT),
        isOn(Setting.LOG),
        origins(),
        number(Setting.BODY_BYTES),
        number(Setting.LINE_BYTES),
        number(Setting.QUERY_BYTES),
        number(Setting.NESTING),
        limits(),
        Duration.ofSeconds(number(Setting.SENDER_SECONDS)),
        number(Setting.CACHE_BYTES));
  }

  Duration calculationTime() {
    return Duration.ofSeconds(number(Setting.CALCULATION_SECONDS));
  }

  boolean isDemo() {
    return isOn(Setting.DEMO);
  }

  /** The directory of plugins, or null if none is named. */
  @Nullable Path plugins() {
    var directory = path(Setting.PLUGINS);
    if (directory != null && !Files.isDirectory(directory)) {
      throw new WrongUse(saidBy(Setting.PLUGINS) + " must be a directory, was " + directory);
    }
    return directory;
  }

  /** The directory of the shop's documents; it need not be there yet. */
  Path data() {
    var directory = path(Setting.DATA);
    if (directory == null) {
      throw new WrongUse(saidBy(Setting.DATA) + " must name a directory");
    }
    if (Files.exists(directory) && !Files.isDirectory(directory)) {
      throw new WrongUse(saidBy(Setting.DATA) + " must be a directory, was " + directory);
    }
    return directory;
  }

  /** Whether the environment names a store, which is else the usual one. */
  boolean isStoreNamed() {
    return environment.containsKey(Setting.DATA.variable()) || database() != null;
  }

  /** The database that holds the documents instead of a directory, or null. */
  @Nullable String database() {
    return given(Setting.DB);
  }

  @Nullable String databaseUser() {
    return given(Setting.DB_USER);
  }

  @Nullable String databasePassword() {
    return given(Setting.DB_PASSWORD);
  }

  private @Nullable String given(Setting setting) {
    return text(setting).isEmpty() ? null : text(setting);
  }

  private Limits limits() {
    return new Limits(
        Map.of(
            Limit.NONE,
            Limit.NONE.usual(),
            Limit.LINES,
            number(Setting.LINES),
            Limit.ORDER_LINES,
            number(Setting.ORDER_LINES),
            Limit.READINGS,
            number(Setting.READINGS)),
        number(Setting.FORMULA_DEPTH),
        number(Setting.EXPANDED_LINES),
        number(Setting.DIGITS));
  }

  private List<String> origins() {
    var origins =
        Arrays.stream(text(Setting.ORIGINS).split(",", -1))
            .map(String::strip)
            .filter(origin -> !origin.isEmpty())
            .toList();
    for (var origin : origins) {
      if (!origin.equals("*") && !origin.matches("https?://[^/\\s,*]+")) {
        throw new WrongUse(
            saidBy(Setting.ORIGINS)
                + " must hold origins such as https://shop.example, was "
                + origin);
      }
    }
    return origins;
  }

  private boolean isOn(Setting setting) {
    return switch (text(setting)) {
      case "on" -> true;
      case "off" -> false;
      default -> throw new WrongUse(saidBy(setting) + " must be on or off, was " + text(setting));
    };
  }

  private int number(Setting setting) {
    return setting.number(text(setting), saidBy(setting));
  }

  private @Nullable Path path(Setting setting) {
    try {
      return text(setting).isEmpty() ? null : Path.of(text(setting));
    } catch (InvalidPathException unreadable) {
      throw new WrongUse(saidBy(setting) + " is no path: " + text(setting));
    }
  }

  private String text(Setting setting) {
    var option = options.get(setting);
    return option != null
        ? option
        : environment.getOrDefault(setting.variable(), setting.usual()).strip();
  }

  private String saidBy(Setting setting) {
    return options.containsKey(setting) ? setting.option() : setting.variable();
  }
}
