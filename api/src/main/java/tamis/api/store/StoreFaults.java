package tamis.api.store;

import java.util.Collection;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Why a document was not written. */
final class StoreFaults {
  private StoreFaults() {}

  static Refusal exists(Kind kind, String id) {
    return refused(FaultCode.EXISTS, kind, id, "exists already");
  }

  static Refusal inUse(Kind kind, String id, Collection<String> users) {
    return refused(FaultCode.IN_USE, kind, id, "is used by " + String.join(", ", users));
  }

  static Refusal gone(String id, String user) {
    return new Refusal(
        new Fault(
            FaultCode.UNKNOWN_FORMULA,
            "",
            id,
            null,
            "formula `" + id + "`, which `" + user + "` names, is not there any more"));
  }

  static Refusal moreObserved(String trial, int came, int seen) {
    return refused(
        FaultCode.STALE,
        Kind.TRIAL,
        trial,
        "has " + came + " later observations now, the request knew " + seen);
  }

  /** Why revision {@code expected} of a document is not its newest. */
  static Refusal notCurrent(Kind kind, String id, @Nullable Stored now, int expected) {
    return now == null ? absent(kind, id) : stale(kind, id, now.number(), expected);
  }

  static Refusal absent(Kind kind, String id) {
    return refused(FaultCode.NOT_FOUND, kind, id, "is not there");
  }

  static Refusal stale(Kind kind, String id, int now, int expected) {
    return refused(FaultCode.STALE, kind, id, "is at revision " + now + " now, not " + expected);
  }

  private static Refusal refused(FaultCode code, Kind kind, String id, String why) {
    return new Refusal(new Fault(code, "", id, null, kind.word() + " `" + id + "` " + why));
  }
}
