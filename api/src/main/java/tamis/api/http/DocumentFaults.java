package tamis.api.http;

import tamis.api.store.Store;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Why a document of a kind cannot be had or changed. */
record DocumentFaults(DocumentKind kind, Store store) {

  Refusal absent(String id) {
    boolean wasThere = !store.revisions(kind.kind(), id).isEmpty();
    return Refusal.of(
        FaultCode.NOT_FOUND,
        wasThere
            ? kind.named(id)
                + " was deleted; its revisions are under "
                + kind.pathOf(id)
                + "/revisions"
            : "no " + kind.named(id));
  }

  Refusal noRevision(String id, String number, boolean isDeletion) {
    return Refusal.of(
        FaultCode.NOT_FOUND,
        isDeletion
            ? kind.named(id) + " was deleted by its revision " + number
            : kind.named(id) + " has no revision " + number);
  }

  Refusal exists(String id) {
    return Refusal.of(
        FaultCode.EXISTS,
        "/id",
        kind.named(id) + " is there already; replace it by PUT " + kind.pathOf(id));
  }

  Refusal thereAlready(String id) {
    return new Refusal(
        new Fault(
            FaultCode.STALE, "", "If-None-Match: *", null, kind.named(id) + " is there already"));
  }

  Refusal gone(String id, String ifMatch) {
    return new Refusal(
        new Fault(
            FaultCode.STALE,
            "",
            ifMatch,
            null,
            "no " + kind.named(id) + ", so none of its revisions matches"));
  }

  Refusal conditionNeeded(String id) {
    return new Refusal(
        new Fault(
            FaultCode.CONDITION_NEEDED,
            "",
            null,
            "If-None-Match: *",
            "no " + kind.named(id) + "; to make it, send `If-None-Match: *`"));
  }

  Refusal builtIn(String id) {
    return Refusal.of(FaultCode.IN_USE, kind.named(id) + " is built in; it can only be replaced");
  }
}
