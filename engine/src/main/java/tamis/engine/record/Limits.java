package tamis.engine.record;

import java.util.EnumMap;
import java.util.Map;

/**
 * How much is read and expanded before it is refused.
 *
 * @param counts entries allowed in a list, by the limit its description names
 * @param depth how deep formulas may nest
 * @param expandedLines how many lines a batch may have over all its parts
 * @param digits how many digits a number may be written with
 */
public record Limits(Map<Limit, Integer> counts, int depth, int expandedLines, int digits) {
  public Limits {
    counts = Map.copyOf(counts);
  }

  public static Limits usual() {
    Map<Limit, Integer> counts = new EnumMap<>(Limit.class);
    for (Limit limit : Limit.values()) {
      counts.put(limit, limit.usual());
    }
    return new Limits(counts, 64, 20_000, 40);
  }

  public int of(Limit limit) {
    return counts.getOrDefault(limit, limit.usual());
  }
}
