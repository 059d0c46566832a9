package tamis.api.http;

import java.util.List;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.HttpStatus;
import tamis.api.representation.Problem;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Refusals as problem documents (RFC 9457). */
final class Problems {
  private static final String SECONDS_TO_WAIT = "5";

  private Problems() {}

  static Reply of(Refusal refusal) {
    return reply(Problem.of(refusal));
  }

  static Reply reply(Problem problem) {
    var reply = Reply.of(problem.status(), Problem.CONTENT_TYPE, problem.bytes());
    boolean passes = problem.status() == 429 || problem.status() == 503;
    return passes ? reply.with(HttpHeader.RETRY_AFTER, SECONDS_TO_WAIT) : reply;
  }

  /** A status of HTTP itself that no fault stands for. */
  static Problem plain(int status, String detail) {
    return new Problem("about:blank", HttpStatus.getMessage(status), status, detail, List.of());
  }

  /** What broke is told in the log only. */
  static Refusal failed() {
    return Refusal.of(FaultCode.FAILED, "the answer failed; the server's log says more");
  }

  static Refusal noSuchPath(String path) {
    return new Refusal(
        new Fault(
            FaultCode.NOT_FOUND,
            "",
            path,
            null,
            "nothing is served at this address; /openapi.json lists what is"));
  }

  static Refusal addressTooLong(int longest) {
    return new Refusal(
        new Fault(
            FaultCode.TOO_LONG_ADDRESS,
            "",
            null,
            "at most " + longest + " bytes",
            "the address is longer than the " + longest + " bytes that are read"));
  }

  static Reply wrongVerb(String verb, String allow) {
    var refusal =
        new Refusal(
            new Fault(
                FaultCode.WRONG_VERB,
                "",
                verb,
                allow,
                verb + " is not offered here; offered are " + allow));
    return of(refusal).with(HttpHeader.ALLOW, allow);
  }
}
