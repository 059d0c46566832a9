package tamis.api.representation;

import java.util.Comparator;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultKind;
import tamis.engine.fault.Refusal;

/** The HTTP status of a fault. */
public final class Statuses {
  private Statuses() {}

  /** A switch without default: a new kind does not compile until it has a status. */
  public static int of(FaultKind kind) {
    return switch (kind) {
      case MALFORMED -> 400;
      case UNIDENTIFIED -> 401;
      case FORBIDDEN -> 403;
      case ABSENT -> 404;
      case WRONG_VERB -> 405;
      case UNACCEPTABLE -> 406;
      case CONFLICT -> 409;
      case STALE -> 412;
      case TOO_LARGE -> 413;
      case TOO_LONG_ADDRESS -> 414;
      case WRONG_TYPE_OF_BODY -> 415;
      case MEANINGLESS -> 422;
      case UNCONDITIONAL -> 428;
      case TOO_OFTEN -> 429;
      case BROKEN -> 500;
      case UNAVAILABLE -> 503;
      case TOO_SLOW -> 504;
      case FULL -> 507;
    };
  }

  /** The status of the weightiest fault: kinds are listed with the weightiest first. */
  public static int of(Refusal refusal) {
    return refusal.faults().stream()
        .map(Fault::code)
        .map(code -> code.kind())
        .min(Comparator.naturalOrder())
        .map(Statuses::of)
        .orElseThrow();
  }

  /** What the status is called (RFC 9110, RFC 6585, RFC 4918). */
  static String title(int status) {
    return switch (status) {
      case 400 -> "Bad Request";
      case 401 -> "Unauthorized";
      case 403 -> "Forbidden";
      case 404 -> "Not Found";
      case 405 -> "Method Not Allowed";
      case 406 -> "Not Acceptable";
      case 409 -> "Conflict";
      case 412 -> "Precondition Failed";
      case 413 -> "Content Too Large";
      case 414 -> "URI Too Long";
      case 415 -> "Unsupported Media Type";
      case 422 -> "Unprocessable Content";
      case 428 -> "Precondition Required";
      case 429 -> "Too Many Requests";
      case 431 -> "Request Header Fields Too Large";
      case 503 -> "Service Unavailable";
      case 504 -> "Gateway Timeout";
      case 507 -> "Insufficient Storage";
      default -> "Internal Server Error";
    };
  }
}
