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

  /**
   * Letters inserted, left out, changed or swapped with their neighbour, by the usual dynamic
   * programme (Levenshtein 1965, Damerau 1964): {@code boli} is one slip from {@code boil}.
   */
  private static int distance(String a, String b) {
    int[][] slips = new int[a.length() + 1][b.length() + 1];
    for (int i = 0; i <= a.length(); i++) {
      slips[i][0] = i;
    }
    for (int j = 0; j <= b.length(); j++) {
      slips[0][j] = j;
    }
    for (int i = 1; i <= a.length(); i++) {
      for (int j = 1; j <= b.length(); j++) {
        int change = slips[i - 1][j - 1] + (a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1);
        int least = Math.min(change, Math.min(slips[i - 1][j], slips[i][j - 1]) + 1);
        slips[i][j] = areSwapped(a, i, b, j) ? Math.min(least, slips[i - 2][j - 2] + 1) : least;
      }
    }
    return slips[a.length()][b.length()];
  }

  private static boolean areSwapped(String a, int i, String b, int j) {
    return i > 1
        && j > 1
        && a.charAt(i - 1) == b.charAt(j - 2)
        && a.charAt(i - 2) == b.charAt(j - 1);
  }
}
