package tamis.api.representation;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Described;

/** Why there is no answer, as RFC 9457 writes it, with all faults. */
public record Problem(
    @Described(value = "What kind of problem; the status says it", example = "about:blank")
        String type,
    @Described(value = "What the status is called", example = "Unprocessable Content") String title,
    @Described(value = "The status", atLeast = "400", atMost = "599", example = "422") int status,
    @Described(
            value = "All faults in one text for a person",
            example = "flour must be more than 0 g, was 0 g")
        String detail,
    @Described("The faults, each with its place") List<Reason> faults) {
  public static final String CONTENT_TYPE = "application/problem+json";

  /** More are counted, not told: a list of ten thousand wrong lines needs no ten thousand texts. */
  private static final int MOST_TOLD = 1_000;

  private static final int LONGEST_DETAIL = 2_000;

  /** One fault. */
  public record Reason(
      @Described(value = "Lower-case words with hyphens, for programs", example = "out-of-bounds")
          String code,
      @Described(value = "The place in the input (JSON Pointer)", example = "/to/flour")
          String pointer,
      @Described(value = "What was given", example = "0 g") @Nullable String given,
      @Described(value = "What is allowed", example = "more than 0 g") @Nullable String allowed,
      @Described(
              value = "A sentence for a person",
              example = "flour must be more than 0 g, was 0 g")
          String message) {
    static Reason of(Fault fault) {
      return new Reason(
          fault.code().toString(),
          fault.pointer(),
          fault.given(),
          fault.allowed(),
          fault.message());
    }
  }

  /** The problem that a refusal is. */
  public static Problem of(Refusal refusal) {
    int status = Statuses.of(refusal);
    List<Fault> faults = refusal.faults();
    String said =
        faults.stream().limit(MOST_TOLD).map(Fault::message).collect(Collectors.joining("; "));
    String detail = said.length() <= LONGEST_DETAIL ? said : shortened(said);
    int untold = faults.size() - MOST_TOLD;
    return new Problem(
        "about:blank",
        Statuses.title(status),
        status,
        untold > 0 ? detail + " (and " + untold + " faults more)" : detail,
        faults.stream().limit(MOST_TOLD).map(Reason::of).toList());
  }

  private static String shortened(String text) {
    boolean split = Character.isHighSurrogate(text.charAt(LONGEST_DETAIL - 1));
    return text.substring(0, split ? LONGEST_DETAIL - 1 : LONGEST_DETAIL) + "…";
  }

  public static Problem of(FaultCode code, String message) {
    return of(Refusal.of(code, message));
  }

  public byte[] bytes() {
    return ResultJson.bytes(this);
  }

  /** One line for the cell of a spreadsheet: {@code ! } and what is wrong. */
  public String text() {
    return "! " + detail.replaceAll("\\s+", " ");
  }
}
