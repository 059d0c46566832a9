package tamis.plugin.intake.source;

import java.util.ArrayList;
import java.util.List;
import tamis.plugin.intake.word.Phrase;

/**
 * A line of the source that is not blank.
 *
 * @param number of the line, blank ones counted, from 1
 * @param start of its text in the source, behind the space before it
 */
public record SourceLine(int number, String text, int start, int end) {

  public static List<SourceLine> of(String source) {
    return of(source, 0, source.length(), 1);
  }

  /**
   * The lines of a part of a source.
   *
   * @param from where a line begins
   * @param first number of that line
   */
  static List<SourceLine> of(String source, int from, int to, int first) {
    List<SourceLine> lines = new ArrayList<>();
    int number = first;
    int start = from;
    for (int i = from; i <= to; i++) {
      boolean behind = i == to;
      if (behind || isBreak(source.charAt(i))) {
        add(lines, source, number, start, i);
        boolean two = !behind && source.charAt(i) == '\r' && i + 1 < to;
        i += two && source.charAt(i + 1) == '\n' ? 1 : 0;
        start = i + 1;
        number++;
      }
    }
    return lines;
  }

  /** How many lines end within a part of a source. */
  static int breaks(String source, int from, int to) {
    int breaks = 0;
    for (int i = from; i < to; i++) {
      boolean two = source.charAt(i) == '\n' && i > 0 && source.charAt(i - 1) == '\r';
      breaks += isBreak(source.charAt(i)) && !two ? 1 : 0;
    }
    return breaks;
  }

  private static boolean isBreak(char c) {
    return c == '\n' || c == '\r' || c == '\u2028' || c == '\u2029' || c == '\u0085' || c == '\f';
  }

  private static void add(List<SourceLine> lines, String source, int number, int from, int to) {
    int start = from;
    int end = to;
    while (start < end && isBlank(source.charAt(start))) {
      start++;
    }
    while (end > start && isBlank(source.charAt(end - 1))) {
      end--;
    }
    if (start < end) {
      lines.add(new SourceLine(number, source.substring(start, end), start, end));
    }
  }

  private static boolean isBlank(char c) {
    return Phrase.isSpace(c) || c == '\uFEFF' || c == '\u200B';
  }
}
