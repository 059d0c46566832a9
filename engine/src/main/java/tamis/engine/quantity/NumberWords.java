package tamis.engine.quantity;

import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Reads numbers in words: {@code half a}, {@code two thirds}, {@code one and one-half}. */
final class NumberWords {
  private static final Map<String, Double> COUNTS =
      Map.ofEntries(
          Map.entry("a", 1.0),
          Map.entry("an", 1.0),
          Map.entry("one", 1.0),
          Map.entry("two", 2.0),
          Map.entry("three", 3.0),
          Map.entry("four", 4.0),
          Map.entry("five", 5.0),
          Map.entry("six", 6.0),
          Map.entry("seven", 7.0),
          Map.entry("eight", 8.0),
          Map.entry("nine", 9.0),
          Map.entry("ten", 10.0),
          Map.entry("eleven", 11.0),
          Map.entry("twelve", 12.0),
          Map.entry("thirteen", 13.0),
          Map.entry("fourteen", 14.0),
          Map.entry("fifteen", 15.0),
          Map.entry("sixteen", 16.0),
          Map.entry("seventeen", 17.0),
          Map.entry("eighteen", 18.0),
          Map.entry("nineteen", 19.0),
          Map.entry("twenty", 20.0));
  private static final Map<String, Double> PARTS =
      Map.ofEntries(
          Map.entry("half", 1 / 2.0),
          Map.entry("halves", 1 / 2.0),
          Map.entry("third", 1 / 3.0),
          Map.entry("thirds", 1 / 3.0),
          Map.entry("quarter", 1 / 4.0),
          Map.entry("quarters", 1 / 4.0),
          Map.entry("fourth", 1 / 4.0),
          Map.entry("fourths", 1 / 4.0),
          Map.entry("eighth", 1 / 8.0),
          Map.entry("eighths", 1 / 8.0));

  private NumberWords() {}

  /** The number that begins here, or null, the cursor being anywhere. */
  static @Nullable Double read(Cursor cursor) {
    String first = cursor.word();
    @Nullable Double part = PARTS.get(first);
    if (part != null) {
      skipOfA(cursor);
      return part;
    }
    @Nullable Double count = COUNTS.get(first);
    return count == null ? null : after(count, cursor);
  }

  /** Whether a number in words begins here; the cursor stays. */
  static boolean here(Cursor cursor) {
    int start = cursor.mark();
    String word = cursor.word();
    cursor.back(start);
    return COUNTS.containsKey(word) || PARTS.containsKey(word);
  }

  private static double after(double count, Cursor cursor) {
    int start = cursor.mark();
    String next = cursor.word();
    @Nullable Double parts = PARTS.get(next);
    if (parts != null) {
      skipOfA(cursor);
      return count * parts;
    }
    if (next.equals("and")) {
      String word = cursor.word();
      @Nullable Double howMany = COUNTS.get(word);
      @Nullable Double fraction = PARTS.get(howMany == null ? word : cursor.word());
      if (fraction != null) {
        return count + (howMany == null ? 1 : howMany) * fraction;
      }
    }
    cursor.back(start);
    boolean twentyFour = count == 20 && cursor.skipWord("-four");
    return twentyFour ? 24 : count;
  }

  /** After "half": "half a cup", "half of a cup". */
  private static void skipOfA(Cursor cursor) {
    int start = cursor.mark();
    String next = cursor.word();
    if (next.equals("of")) {
      start = cursor.mark();
      next = cursor.word();
    }
    if (!next.equals("a") && !next.equals("an")) {
      cursor.back(start);
    }
  }
}
