package tamis.api.representation;

import java.util.Arrays;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Names of schemas. A record within another carries the outer one's name, a record of a plugin the
 * plugin's: {@code Line} of a formula, {@code ConversionInput}, {@code DoughTemperatureResult}.
 */
final class SchemaNames {
  private final Map<Class<?>, String> byClass = new HashMap<>();
  private final Set<String> taken = new HashSet<>();

  /** The name that a class has got, or null. */
  @Nullable String known(Class<?> type) {
    return byClass.get(type);
  }

  /** The name of a class, given now if it has none; {@code plugin} is empty for our own. */
  String of(Class<?> type, String plugin) {
    @Nullable String known = byClass.get(type);
    return known == null ? give(type, wanted(type, plugin)) : known;
  }

  /** Gives a class a name; numbered if another class has it. */
  String give(Class<?> type, String wanted) {
    String name = free(wanted);
    byClass.put(type, name);
    return name;
  }

  /** A name that nothing else has and nothing else will get. */
  String free(String wanted) {
    String name = wanted;
    for (int i = 2; !taken.add(name); i++) {
      name = wanted + i;
    }
    return name;
  }

  private static String wanted(Class<?> type, String plugin) {
    StringBuilder name = new StringBuilder(type.getSimpleName());
    for (Class<?> outer = type.getEnclosingClass();
        outer != null;
        outer = outer.getEnclosingClass()) {
      name.insert(0, outer.getSimpleName());
    }
    boolean ours = type.getName().startsWith("tamis.engine.");
    String prefix = ours ? "" : capital(plugin);
    return name.toString().startsWith(prefix) ? name.toString() : prefix + name;
  }

  /** {@code bakers-percentage} as {@code BakersPercentage}. */
  static String capital(String hyphened) {
    return Arrays.stream(hyphened.split("-"))
        .filter(word -> !word.isEmpty())
        .map(word -> Character.toUpperCase(word.charAt(0)) + word.substring(1))
        .collect(Collectors.joining());
  }
}
