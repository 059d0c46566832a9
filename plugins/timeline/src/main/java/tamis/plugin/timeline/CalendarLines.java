package tamis.plugin.timeline;

import java.nio.charset.StandardCharsets;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Lines of a calendar, folded between characters at 75 octets (RFC 5545, section 3.1). */
final class CalendarLines {
  static final DateTimeFormatter LOCAL =
      DateTimeFormatter.ofPattern("yyyyMMdd'T'HHmmss", Locale.ROOT);
  private static final int LONGEST_LINE = 75;

  private final StringBuilder text = new StringBuilder();

  void add(String name, String value) {
    int octets = 0;
    for (int point : (Iterable<Integer>) (name + ":" + value).codePoints()::iterator) {
      String character = Character.toString(point);
      int more = character.getBytes(StandardCharsets.UTF_8).length;
      if (octets + more > LONGEST_LINE) {
        text.append("\r\n ");
        octets = 1;
      }
      text.append(character);
      octets += more;
    }
    text.append("\r\n");
  }

  @Override
  public String toString() {
    return text.toString();
  }
}
