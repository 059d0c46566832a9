package tamis.engine.record;

import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

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
    Map<Limit, Integer> kept = new EnumMap<>(Limit.class);
    kept.putAll(counts);
    counts = Collections.unmodifiableMap(kept);
  }

  public static Limits usual() {
    Map<Limit, Integer> counts = new EnumMap<>(Limit.class);
    for (Limit limit : Limit.values()) {
      counts.put(limit, limit.usual());
    }
    return new Limits(counts, 64, 20_000, 40);
  }

  public int of(Limit limit) {
    @Nullable Integer count = counts.get(limit);
    return count == null ? limit.usual() : count;
  }
}
