package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.spi.Calculation;

/** Chooses the form of an answer: {@code format=} before {@code .csv} before {@code Accept}. */
public final class Formats {
  private Formats() {}

  /** What a calculation can be answered in, the usual one first. */
  public static List<Format> of(Calculation<?, ?> calculation) {
    List<Format> formats = new ArrayList<>(List.of(Format.JSON, Format.CSV, Format.TEXT));
    calculation.renderings().keySet().stream()
        .sorted()
        .map(Format::rendering)
        .forEach(formats::add);
    return formats;
  }

  /**
   * @throws Refusal {@code unacceptable} if {@code Accept} admits none or the format is unknown,
   *     {@code inconsistent} if the address and the query want two
   */
  public static Format choose(
      Options options, boolean csvEnding, @Nullable String accept, Calculation<?, ?> calculation) {
    return choose(options.format(), csvEnding, accept, of(calculation));
  }

  /** The same for what is no calculation. */
  public static Format choose(
      @Nullable String wanted, boolean csvEnding, @Nullable String accept, List<Format> offered) {
    if (wanted != null) {
      Format format = named(wanted, offered);
      if (csvEnding && !format.equals(Format.CSV)) {
        throw new Refusal(
            new Fault(
                FaultCode.INCONSISTENT,
                "/format",
                wanted,
                "csv",
                "the address ends in .csv and format=" + wanted + " wants another form"));
      }
      return format;
    }
    if (csvEnding) {
      return Format.CSV;
    }
    return accept == null || accept.isBlank() ? offered.get(0) : Accept.best(accept, offered);
  }

  private static Format named(String wanted, List<Format> offered) {
    return offered.stream()
        .filter(format -> format.name().equals(wanted))
        .findFirst()
        .orElseThrow(() -> new Refusal(unknown(wanted, offered)));
  }

  static Fault unknown(String wanted, List<Format> offered) {
    String allowed = offered.stream().map(Format::name).collect(Collectors.joining(", "));
    return new Fault(
        FaultCode.UNACCEPTABLE,
        "/format",
        wanted,
        allowed,
        "`format` must be one of " + allowed + ", was " + wanted);
  }
}
