package tamis.api.representation;

import java.util.Map;

/**
 * A form in which an answer is given.
 *
 * @param name as {@code format=} says it
 * @param mediaType as {@code Accept} says it
 */
public record Format(String name, String mediaType) {
  public static final Format JSON = new Format("json", "application/json");
  public static final Format CSV = new Format("csv", "text/csv");
  public static final Format TEXT = new Format("text", "text/plain");

  /** Short names of usual renderings; another is named by its subtype. */
  private static final Map<String, String> SHORT =
      Map.of(
          "image/svg+xml", "svg",
          "text/calendar", "ics",
          "text/html", "html",
          "application/ld+json", "jsonld");

  /** The form of a rendering that a calculation offers. */
  public static Format rendering(String mediaType) {
    String subtype = mediaType.substring(mediaType.indexOf('/') + 1);
    return new Format(SHORT.getOrDefault(mediaType, subtype), mediaType);
  }

  /** The media type with its charset. JSON has none: it is UTF-8 by its own standard. */
  public String contentType() {
    return this.equals(JSON) ? mediaType : mediaType + "; charset=utf-8";
  }
}
