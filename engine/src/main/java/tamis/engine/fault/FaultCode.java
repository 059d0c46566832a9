package tamis.engine.fault;

import java.util.Locale;

/** The closed list of faults, each with its kind. The text form is lower-case with hyphens. */
public enum FaultCode {
  NOT_UTF8(FaultKind.MALFORMED),
  NOT_JSON(FaultKind.MALFORMED),
  NOT_A_QUERY(FaultKind.MALFORMED),
  NOT_CSV(FaultKind.MALFORMED),
  DUPLICATE_NAME(FaultKind.MALFORMED),
  TOO_DEEP(FaultKind.MEANINGLESS),
  TOO_MANY(FaultKind.MEANINGLESS),
  TOO_MANY_DIGITS(FaultKind.MEANINGLESS),
  UNKNOWN_FIELD(FaultKind.MEANINGLESS),
  MISSING(FaultKind.MEANINGLESS),
  NULL(FaultKind.MEANINGLESS),
  WRONG_TYPE(FaultKind.MEANINGLESS),
  OUT_OF_BOUNDS(FaultKind.MEANINGLESS),
  NOT_ALLOWED(FaultKind.MEANINGLESS),
  EXACTLY_ONE(FaultKind.MEANINGLESS),
  INCONSISTENT(FaultKind.MEANINGLESS),
  DUPLICATE(FaultKind.MEANINGLESS),
  UNREADABLE_QUANTITY(FaultKind.MEANINGLESS),
  STRAY_COMMA(FaultKind.MEANINGLESS),
  NO_UNIT(FaultKind.MEANINGLESS),
  UNKNOWN_UNIT(FaultKind.MEANINGLESS),
  WRONG_DIMENSION(FaultKind.MEANINGLESS),
  UNKNOWN_INGREDIENT(FaultKind.MEANINGLESS),
  AMBIGUOUS_INGREDIENT(FaultKind.MEANINGLESS),
  UNKNOWN_FORMULA(FaultKind.MEANINGLESS),
  UNKNOWN_PAN(FaultKind.MEANINGLESS),
  UNKNOWN_STATE(FaultKind.MEANINGLESS),
  UNKNOWN_STAGE(FaultKind.MEANINGLESS),
  UNKNOWN_TRIAL(FaultKind.MEANINGLESS),
  UNKNOWN_TABLE(FaultKind.ABSENT),
  UNKNOWN_CALCULATION(FaultKind.ABSENT),
  NO_DENSITY(FaultKind.MEANINGLESS),
  NO_PIECE_MASS(FaultKind.MEANINGLESS),
  NO_FLOUR(FaultKind.MEANINGLESS),
  NO_SIZE(FaultKind.MEANINGLESS),
  CYCLE(FaultKind.MEANINGLESS),
  IMPOSSIBLE(FaultKind.MEANINGLESS),
  OUTSIDE_RANGE(FaultKind.MEANINGLESS),
  INCOMPLETE(FaultKind.MEANINGLESS),
  NO_SUCH_VALUE(FaultKind.MEANINGLESS),
  NOT_FOUND(FaultKind.ABSENT),
  EXISTS(FaultKind.CONFLICT),
  IN_USE(FaultKind.CONFLICT),
  STALE(FaultKind.STALE),
  CONDITION_NEEDED(FaultKind.UNCONDITIONAL),
  KEY_NEEDED(FaultKind.UNIDENTIFIED),
  FORBIDDEN(FaultKind.FORBIDDEN),
  WRONG_VERB(FaultKind.WRONG_VERB),
  UNACCEPTABLE(FaultKind.UNACCEPTABLE),
  WRONG_TYPE_OF_BODY(FaultKind.WRONG_TYPE_OF_BODY),
  TOO_LARGE(FaultKind.TOO_LARGE),
  TOO_LONG_ADDRESS(FaultKind.TOO_LONG_ADDRESS),
  TOO_OFTEN(FaultKind.TOO_OFTEN),
  PLUGIN_FAILED(FaultKind.BROKEN),
  FAILED(FaultKind.BROKEN),
  SWITCHED_OFF(FaultKind.UNAVAILABLE),
  STORE_UNAVAILABLE(FaultKind.UNAVAILABLE),
  TOO_SLOW(FaultKind.TOO_SLOW),
  STORE_FULL(FaultKind.FULL);

  private final FaultKind kind;
  private final String text;

  FaultCode(FaultKind kind) {
    this.kind = kind;
    this.text = name().toLowerCase(Locale.ROOT).replace('_', '-');
  }

  public FaultKind kind() {
    return kind;
  }

  @Override
  public String toString() {
    return text;
  }
}
