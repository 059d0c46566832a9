package tamis.api.representation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Nearest;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Calculation;

/** Reads the query of an address: an input, options, or both. */
public final class QueryInput {
  /** Bytes of a query that are read unless the operator says otherwise. */
  public static final int LONGEST = 8192;

  /** Read by nobody: {@code k} makes an address new to a cache, {@code key} is read by the door. */
  private static final Set<String> ALWAYS = Set.of("k", "key");

  private QueryInput() {}

  /**
   * A query that holds the input and how to answer. Faults that can be told together with those of
   * the input are kept in it.
   *
   * @throws Refusal if it is too long or cannot be read at all
   */
  public static Query read(@Nullable String raw, Calculation<?, ?> calculation, int longest) {
    Faults faults = new Faults();
    Map<String, List<String>> pairs = pairs(raw, longest);
    Options options = options(pairs, faults, calculation);
    QueryTree tree = new QueryTree(faults);
    pairs.forEach(
        (name, values) -> {
          if (!Options.RESERVED.contains(name)) {
            tree.add(name, values);
          }
        });
    return new Query(tree.assembled(calculation.input()), options, gathered(faults));
  }

  /** A query that says only how to answer, beside a body. */
  public static Query options(@Nullable String raw, Calculation<?, ?> calculation, int longest) {
    Faults faults = new Faults();
    Map<String, List<String>> pairs = pairs(raw, longest);
    Options options = options(pairs, faults, calculation);
    for (String name : pairs.keySet()) {
      if (!Options.RESERVED.contains(name)) {
        faults.add(unknown(name, Options.RESERVED));
      }
    }
    return new Query(Map.of(), options, gathered(faults));
  }

  /**
   * A query of a few plain names, each once.
   *
   * @throws Refusal with all unknown and repeated names
   */
  public static Map<String, String> plain(@Nullable String raw, int longest, String... allowed) {
    Faults faults = new Faults();
    Set<String> names = Set.of(allowed);
    Map<String, String> plain = new LinkedHashMap<>();
    pairs(raw, longest)
        .forEach(
            (name, values) -> {
              if (names.contains(name)) {
                plain.put(name, single(name, values, faults));
              } else if (!ALWAYS.contains(name)) {
                faults.add(unknown(name, names));
              }
            });
    faults.refuseIfAny();
    return plain;
  }

  /** Whether faults are to be answered as text, of a query that may be faulty itself. */
  public static boolean wantsTextErrors(@Nullable String raw) {
    return raw != null && ("&" + raw + "&").contains("&errors=text&");
  }

  private static Options options(
      Map<String, List<String>> pairs, Faults faults, Calculation<?, ?> calculation) {
    Map<String, String> given = new LinkedHashMap<>();
    pairs.forEach(
        (name, values) -> {
          if (name.equals("k")) {
            return;
          }
          if (Options.RESERVED.contains(name)) {
            given.put(name, single(name, values, faults));
          }
        });
    String format = given.get("format");
    List<Format> offered = Formats.of(calculation);
    if (format != null && offered.stream().noneMatch(one -> one.name().equals(format))) {
      faults.add(Formats.unknown(format, offered));
    }
    return Options.read(given, faults);
  }

  private static String single(String name, List<String> values, Faults faults) {
    if (values.size() > 1) {
      faults.add(
          new Fault(
              FaultCode.DUPLICATE_NAME,
              "/" + RecordReader.escaped(name),
              String.join(", ", values),
              "one value",
              "`" + name + "` is given " + values.size() + " times"));
    }
    return values.get(0);
  }

  private static Map<String, List<String>> pairs(@Nullable String raw, int longest) {
    if (raw == null || raw.isEmpty()) {
      return Map.of();
    }
    if (raw.length() > longest) {
      throw new Refusal(
          new Fault(
              FaultCode.TOO_LONG_ADDRESS,
              "",
              raw.length() + " bytes",
              "at most " + longest + " bytes",
              "the query has " + raw.length() + " bytes, at most " + longest + " are read"));
    }
    Map<String, List<String>> pairs = new LinkedHashMap<>();
    for (String part : raw.split("&", -1)) {
      if (part.isEmpty()) {
        continue;
      }
      int equals = part.indexOf('=');
      String name = PercentText.decode(equals < 0 ? part : part.substring(0, equals));
      String value = equals < 0 ? "" : PercentText.decode(part.substring(equals + 1));
      if (name.isEmpty()) {
        throw Refusal.of(FaultCode.NOT_A_QUERY, "the query has a value without a name: " + part);
      }
      pairs.computeIfAbsent(name, n -> new ArrayList<>()).add(value);
    }
    return pairs;
  }

  private static Fault unknown(String name, Set<String> known) {
    String near = Nearest.suggestion(name, known);
    return new Fault(
        FaultCode.UNKNOWN_FIELD,
        "/" + RecordReader.escaped(name),
        name,
        String.join(", ", known.stream().sorted().toList()),
        "`" + name + "` is not known here" + near);
  }

  private static List<Fault> gathered(Faults faults) {
    try {
      faults.refuseIfAny();
      return List.of();
    } catch (Refusal refusal) {
      return refusal.faults();
    }
  }
}
