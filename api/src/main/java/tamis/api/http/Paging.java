package tamis.api.http;

import java.nio.charset.StandardCharsets;
import java.util.Base64;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.QueryInput;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/**
 * What part of a list is asked for.
 *
 * @param words that each item must have; empty for all
 * @param limit so many items at most
 * @param after the last item of the page before, or null
 */
record Paging(String words, int limit, @Nullable String after) {
  private static final int USUAL = 100;
  private static final int MOST = 1_000;

  /**
   * @throws tamis.engine.fault.Refusal with all faults
   */
  static Paging of(@Nullable String query, int longest, String... names) {
    Map<String, String> given = QueryInput.plain(query, longest, names);
    var faults = new Faults();
    int limit = limit(given.get("limit"), faults);
    @Nullable String after = after(given.get("cursor"), faults);
    faults.refuseIfAny();
    return new Paging(given.getOrDefault("q", ""), limit, after);
  }

  /** The cursor of the page behind {@code items}, which holds one more than is shown; or null. */
  <T> @Nullable String next(List<T> items, Function<T, String> key) {
    return items.size() <= limit ? null : cursor(key.apply(items.get(limit - 1)));
  }

  /** The number behind which the page begins, of a list by number; 0 for the first. */
  int afterNumber() {
    return after != null && after.matches("[0-9]{1,9}") ? Integer.parseInt(after) : 0;
  }

  <T> List<T> shown(List<T> items) {
    return items.size() <= limit ? items : items.subList(0, limit);
  }

  private static String cursor(String key) {
    return Base64.getUrlEncoder()
        .withoutPadding()
        .encodeToString(key.getBytes(StandardCharsets.UTF_8));
  }

  private static @Nullable String after(@Nullable String cursor, Faults faults) {
    if (cursor == null) {
      return null;
    }
    try {
      return new String(Base64.getUrlDecoder().decode(cursor), StandardCharsets.UTF_8);
    } catch (IllegalArgumentException unreadable) {
      faults.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/cursor",
              cursor,
              "`next` of the page before",
              "`cursor` must be `next` of the page before, was " + cursor));
      return null;
    }
  }

  private static int limit(@Nullable String limit, Faults faults) {
    if (limit == null) {
      return USUAL;
    }
    if (limit.matches("[0-9]{1,4}")) {
      int number = Integer.parseInt(limit);
      if (number >= 1 && number <= MOST) {
        return number;
      }
    }
    faults.add(
        new Fault(
            FaultCode.OUT_OF_BOUNDS,
            "/limit",
            limit,
            "1 to " + MOST,
            "`limit` must be a whole number from 1 to " + MOST + ", was " + limit));
    return USUAL;
  }
}
