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
    List<SourceLine> lines = new ArrayList<>();
    int number = 1;
    int start = 0;
    for (int i = 0; i <= source.length(); i++) {
      boolean behind = i == source.length();
      if (behind || isBreak(source.charAt(i))) {
        add(lines, source, number, start, i);
        boolean two = !behind && source.charAt(i) == '\r' && i + 1 < source.length();
        i += two && source.charAt(i + 1) == '\n' ? 1 : 0;
        start = i + 1;
        number++;
      }
    }
    return lines;
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
