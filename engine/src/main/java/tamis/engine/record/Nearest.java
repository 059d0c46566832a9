package tamis.engine.record;

import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;

/** Finds the names that somebody may have meant. */
public final class Nearest {
  private Nearest() {}

  /** At most three of {@code names} within a few letters of {@code given}, nearest first. */
  public static List<String> to(String given, Collection<String> names) {
    String wanted = given.toLowerCase(Locale.ROOT);
    if (wanted.length() > 60) {
      return List.of();
    }
    int far = Math.max(1, wanted.length() / 3);
    record Near(String name, int distance) {}
    return names.stream()
        .filter(name -> Math.abs(name.length() - wanted.length()) <= far)
        .map(name -> new Near(name, distance(wanted, name.toLowerCase(Locale.ROOT))))
        .filter(near -> near.distance() <= far)
        .sorted(Comparator.comparingInt(Near::distance).thenComparing(Near::name))
        .limit(3)
        .map(Near::name)
        .toList();
  }

  /** {@code ; did you mean a, b or c?} or nothing. */
  public static String suggestion(String given, Collection<String> names) {
    List<String> near = to(given, names);
    return near.isEmpty() ? "" : "; did you mean " + String.join(" or ", near) + "?";
  }

  /** Letters inserted, left out or changed, by the usual dynamic programme (Levenshtein 1965). */
  private static int distance(String a, String b) {
    int[] previous = new int[b.length() + 1];
    int[] row = new int[b.length() + 1];
    for (int j = 0; j <= b.length(); j++) {
      previous[j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      row[0] = i;
      for (int j = 1; j <= b.length(); j++) {
        int change = previous[j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        row[j] = Math.min(change, Math.min(previous[j], row[j - 1]) + 1);
      }
      int[] swap = previous;
      previous = row;
      row = swap;
    }
    return previous[b.length()];
  }
}
