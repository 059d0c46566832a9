package tamis.api.http;

import io.javalin.http.Context;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Conditions of a request, by the strong tags of what it is about (RFC 9110, section 13). */
final class Conditions {
  private static final String ANY = "*";
  private static final String SQUEEZED = "-gzip";

  private Conditions() {}

  static String tag(int number) {
    return tag("" + number);
  }

  static String tag(String version) {
    return '"' + version + '"';
  }

  /** The tag of the same answer in a compressed form, whose bytes are other ones. */
  static String squeezed(String tag) {
    return tag.substring(0, tag.length() - 1) + SQUEEZED + '"';
  }

  /** Whether the caller has this already, in either form, so that 304 is answer enough. */
  static boolean isKnown(@Nullable String ifNoneMatch, String tag) {
    return ifNoneMatch != null
        && names(ifNoneMatch.replace("W/", "").replace(SQUEEZED + '"', "\""), tag);
  }

  /** Whether the caller asks for something to be made that is not there yet. */
  static boolean isCreation(Context call) {
    return ANY.equals(stripped(call.req().getHeader("If-None-Match")));
  }

  /**
   * Refuses a change of what the caller has not seen.
   *
   * @param number of the newest revision
   */
  static void seen(@Nullable String header, int number) {
    seen(header, "" + number);
  }

  static void seen(@Nullable String header, String version) {
    if (header == null) {
      throw new Refusal(
          new Fault(
              FaultCode.CONDITION_NEEDED,
              "",
              null,
              "If-Match: " + tag(version),
              "a change needs `If-Match` with the tag of the revision that it changes, from `ETag`"));
    }
    if (!names(header, tag(version))) {
      throw new Refusal(
          new Fault(
              FaultCode.STALE,
              "",
              header,
              tag(version),
              "its newest revision is " + tag(version) + ", the request was about " + header));
    }
  }

  private static boolean names(String header, String tag) {
    return ANY.equals(header.strip())
        || Arrays.stream(header.split(",", -1)).anyMatch(one -> one.strip().equals(tag));
  }

  private static @Nullable String stripped(@Nullable String header) {
    return header == null ? null : header.strip();
  }
}
