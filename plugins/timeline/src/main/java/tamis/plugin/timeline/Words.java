package tamis.plugin.timeline;

import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.HexFormat;
import tamis.engine.fault.Bounds;

/** What people and calendars are told. */
final class Words {
  static final String HOT_SUGAR =
      "hot sugar sticks and burns far deeper than boiling water: do not leave it to keep to a plan,"
          + " and measure rather than count minutes";
  private static final int KEY_DIGITS = 32;

  private Words() {}

  /** A length of time as a baker says it: {@code 2 h 5 min}. */
  static String span(long micros) {
    double minutes = Math.round(micros / 6e6) / 10.0;
    long hours = (long) (minutes / 60);
    double rest = Math.round((minutes - hours * 60) * 10) / 10.0;
    if (hours == 0) {
      return Bounds.plain(rest) + " min";
    }
    return rest == 0 ? hours + " h" : hours + " h " + Bounds.plain(rest) + " min";
  }

  /** The same key for the same text. */
  static String key(String text) {
    try {
      byte[] hash =
          MessageDigest.getInstance("SHA-256").digest(text.getBytes(StandardCharsets.UTF_8));
      return HexFormat.of().formatHex(hash).substring(0, KEY_DIGITS);
    } catch (NoSuchAlgorithmException impossible) {
      throw new IllegalStateException("every Java has SHA-256", impossible);
    }
  }
}
