package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Reads the header {@code Accept} (RFC 9110, 12.5.1). */
final class Accept {
  private Accept() {}

  /** One entry of the header with its weight and its place. */
  private record Wanted(String type, String subtype, double weight, int place) {

    /** How closely it names a media type: 0 not at all, 1 any, 2 any of the type, 3 exactly. */
    int closeness(String mediaType) {
      int slash = mediaType.indexOf('/');
      if (type.equals("*")) {
        return 1;
      }
      if (!type.equals(mediaType.substring(0, slash))) {
        return 0;
      }
      if (subtype.equals("*")) {
        return 2;
      }
      return subtype.equals(mediaType.substring(slash + 1)) ? 3 : 0;
    }
  }

  /**
   * The form with the highest weight; of equal ones the closer named, then the earlier named, then
   * the earlier offered.
   */
  static Format best(String header, List<Format> offered) {
    List<Wanted> wanted = read(header);
    @Nullable Format best = null;
    @Nullable Wanted reason = null;
    for (Format format : offered) {
      @Nullable Wanted closest = closest(wanted, format.mediaType());
      if (closest != null && closest.weight() > 0 && (reason == null || beats(closest, reason))) {
        best = format;
        reason = closest;
      }
    }
    if (best == null) {
      throw unacceptable(header, offered);
    }
    return best;
  }

  private static boolean beats(Wanted one, Wanted other) {
    if (one.weight() != other.weight()) {
      return one.weight() > other.weight();
    }
    boolean named = !one.subtype().equals("*");
    boolean otherNamed = !other.subtype().equals("*");
    return named == otherNamed ? named && one.place() < other.place() : named;
  }

  private static @Nullable Wanted closest(List<Wanted> wanted, String mediaType) {
    @Nullable Wanted closest = null;
    for (Wanted one : wanted) {
      int closeness = one.closeness(mediaType);
      if (closeness > 0 && (closest == null || closeness > closest.closeness(mediaType))) {
        closest = one;
      }
    }
    return closest;
  }

  private static List<Wanted> read(String header) {
    List<Wanted> wanted = new ArrayList<>();
    for (String entry : header.toLowerCase(Locale.ROOT).split(",", -1)) {
      String[] parts = entry.split(";", -1);
      String range = parts[0].strip();
      int slash = range.indexOf('/');
      if (slash > 0) {
        double weight = weight(parts);
        String subtype = range.substring(slash + 1);
        wanted.add(new Wanted(range.substring(0, slash), subtype, weight, wanted.size()));
      } else if (range.equals("*")) { // what some older clients send
        wanted.add(new Wanted("*", "*", weight(parts), wanted.size()));
      }
    }
    return wanted;
  }

  private static double weight(String[] parts) {
    for (int i = 1; i < parts.length; i++) {
      String part = parts[i].strip();
      if (part.matches("q=(0(\\.\\d{0,3})?|1(\\.0{0,3})?)")) {
        return Double.parseDouble(part.substring(2));
      }
    }
    return 1;
  }

  private static Refusal unacceptable(String header, List<Format> offered) {
    String allowed = offered.stream().map(Format::mediaType).collect(Collectors.joining(", "));
    return new Refusal(
        new Fault(
            FaultCode.UNACCEPTABLE,
            "",
            header,
            allowed,
            "none of the forms that `Accept` names can be given; there are " + allowed));
  }
}
