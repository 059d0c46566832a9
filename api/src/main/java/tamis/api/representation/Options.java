package tamis.api.representation;

import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Shape;

/**
 * How an answer is to be given, as the query says it.
 *
 * @param format the name of a {@link Format}, or null
 * @param pick a JSON Pointer into the result, or null
 * @param decimalComma numbers of the query, of text and of CSV have a decimal comma
 * @param errorsAsText faults are answered by 200 and a short text, for the cell of a spreadsheet
 * @param units whose units are displayed beside the figures: us, metric, or null
 * @param bom CSV begins with a byte order mark
 * @param partial figures that are known in part are given
 * @param sources sources are told
 * @param key who asks, for clients that can send no header
 */
public record Options(
    @Nullable String format,
    @Nullable String pick,
    boolean decimalComma,
    boolean errorsAsText,
    @Nullable String units,
    boolean bom,
    boolean partial,
    boolean sources,
    @Nullable String key) {

  /** Names that no input may have, for they say how to answer; {@code k} is read by nobody. */
  public static final Set<String> RESERVED =
      Set.of(
          "format", "pick", "decimal", "errors", "units", "bom", "partial", "sources", "k", "key");

  private static final Pattern LONE_TILDE = Pattern.compile("~(?![01])");

  public static Options none() {
    return new Options(null, null, false, false, null, false, false, true, null);
  }

  /**
   * @throws IllegalArgumentException if a component of an input is named as an option is; {@code
   *     units} may be one, and is then filled from the query
   */
  public static void refuseReserved(Class<? extends Record> input) {
    Set<String> taken = new TreeSet<>(RESERVED);
    taken.retainAll(Shape.of(input).components().keySet());
    taken.remove("units");
    if (!taken.isEmpty()) {
      throw new IllegalArgumentException(
          "an input may not be named " + String.join(", ", taken) + ": queries need the name");
    }
  }

  /** The options among the names of a query; those that cannot be meant are left at the usual. */
  static Options read(Map<String, String> given, Faults faults) {
    Reader reader = new Reader(given, faults);
    return new Options(
        given.get("format"),
        reader.pointer("pick"),
        reader.isWord("decimal", "comma", "point"),
        reader.isWord("errors", "text", "problem"),
        reader.word("units", "us", "metric"),
        reader.flag("bom", false),
        reader.flag("partial", false),
        reader.flag("sources", true),
        given.get("key"));
  }

  private record Reader(Map<String, String> given, Faults faults) {

    boolean isWord(String name, String special, String usual) {
      return special.equals(word(name, special, usual));
    }

    boolean flag(String name, boolean usual) {
      @Nullable String word = word(name, "yes", "no");
      return word == null ? usual : word.equals("yes");
    }

    @Nullable String word(String name, String... words) {
      @Nullable String text = given.get(name);
      if (text == null || Set.of(words).contains(text)) {
        return text;
      }
      String allowed = String.join(" or ", words);
      refuse(name, text, allowed);
      return null;
    }

    @Nullable String pointer(String name) {
      @Nullable String text = given.get(name);
      if (text == null || text.isEmpty() || text.startsWith("/")) {
        if (text == null || !LONE_TILDE.matcher(text).find()) {
          return text;
        }
      }
      refuse(name, text, "a JSON Pointer into the result, such as /lines/0/grams");
      return null;
    }

    private void refuse(String name, String text, String allowed) {
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/" + name,
              text,
              allowed,
              "`" + name + "` must be " + allowed + ", was " + text));
    }
  }
}
