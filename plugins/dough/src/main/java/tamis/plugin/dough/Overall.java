package tamis.plugin.dough;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.Part;

/**
 * A formula as if it were mixed in one go: its own lines and those of the parts that join, each
 * ingredient once. A part that does not join is one line.
 */
final class Overall {
  private final Map<String, Entry> entries = new LinkedHashMap<>();
  private final Map<String, Integer> places = new HashMap<>();
  private final List<BatchLine> joined = new ArrayList<>();
  private final List<BatchLine> asNeeded = new ArrayList<>();
  private final List<Part> apart = new ArrayList<>();

  /** What stands in one row of the table, and where. */
  private record Entry(int place, PercentLine first, double grams, boolean flour) {
    Entry plus(double more, boolean alsoFlour) {
      return new Entry(place, first, grams + more, flour || alsoFlour);
    }
  }

  private Overall() {}

  static Overall of(Part root) {
    Overall overall = new Overall();
    overall.add(root);
    return overall;
  }

  private void add(Part formula) {
    for (Mixed mixed : Mixed.of(formula)) {
      if (mixed.line() != null) {
        add(mixed.line());
      } else if (mixed.part() != null && mixed.part().role().joins()) {
        add(mixed.part());
      } else if (mixed.part() != null) {
        addApart(mixed.part());
      }
    }
  }

  private void add(BatchLine line) {
    if (line.isAsNeeded()) {
      asNeeded.add(line);
      return;
    }
    joined.add(line);
    PercentLine first = PercentLine.of(line, 0, 0);
    int place =
        add("ingredient " + line.ingredient().id(), first, line.grams().typical(), line.flour());
    places.put(line.path(), place);
  }

  private void addApart(Part part) {
    apart.add(part);
    PercentLine first = PercentLine.of(part, 0, 0);
    String id = part.formula().id() == null ? part.path() : part.formula().id();
    putAll(part, add("formula " + id, first, part.finished().typical(), false));
  }

  private int add(String key, PercentLine first, double grams, boolean flour) {
    @Nullable Entry known = entries.get(key);
    Entry entry =
        known == null ? new Entry(entries.size(), first, grams, flour) : known.plus(grams, flour);
    entries.put(key, entry);
    return entry.place();
  }

  /** What lies in a part that stays apart stands where the part stands. */
  private void putAll(Part part, int place) {
    part.lines().forEach(line -> places.put(line.path(), place));
    part.parts().forEach(inner -> putAll(inner, place));
  }

  /** Each ingredient and each part that stays apart, as a percent of {@code flour}. */
  List<PercentLine> lines(double flour) {
    List<PercentLine> lines = new ArrayList<>();
    for (Entry entry : entries.values()) {
      PercentLine first = entry.first();
      lines.add(
          new PercentLine(
              first.ingredient(),
              first.formula(),
              first.name(),
              entry.flour() ? true : null,
              entry.grams(),
              Percent.of(entry.grams(), flour)));
    }
    return lines;
  }

  /** All that is weighed, in grams. */
  double grams() {
    return entries.values().stream().mapToDouble(Entry::grams).sum();
  }

  /** In which of {@link #lines} a line of the batch stands, or null if it is in none. */
  @Nullable Integer place(BatchLine line) {
    return places.get(line.path());
  }

  /** Lines of the formula and of the parts that join. */
  List<BatchLine> joined() {
    return joined;
  }

  /** Lines outside of mass and percent. */
  List<BatchLine> asNeeded() {
    return asNeeded;
  }

  /** Parts that do not join. */
  List<Part> apart() {
    return apart;
  }
}
