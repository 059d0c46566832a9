package tamis.api.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Objects;
import org.eclipse.jetty.http.HttpHeader;
import org.jspecify.annotations.Nullable;
import tamis.api.http.DocumentKind.Present;
import tamis.api.representation.QueryInput;
import tamis.api.store.Document;
import tamis.api.store.DocumentReader;
import tamis.api.store.Store;
import tamis.api.store.Stored;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;

/** Reads and changes the documents of one kind. */
final class Documents {
  /** Who writes, as long as nobody has to say who they are. */
  private static final String AUTHOR = "local";

  private final DocumentKind kind;
  private final DocumentFaults faults;
  private final Store store;
  private final Kitchens kitchens;
  private final Bodies bodies;
  private final Limits limits;
  private final int longestQuery;

  Documents(
      DocumentKind kind, Store store, Kitchens kitchens, Bodies bodies, ServerSettings settings) {
    this.kind = kind;
    this.faults = new DocumentFaults(kind, store);
    this.store = store;
    this.kitchens = kitchens;
    this.bodies = bodies;
    this.limits = settings.limits();
    this.longestQuery = settings.queryBytes();
  }

  Reply create(Context call) throws IOException {
    takesNoQuery(call);
    var document = read(call, null);
    if (kind.present(store, document.id()) != null) {
      throw faults.exists(document.id());
    }
    return written(201, store.create(document, AUTHOR));
  }

  Reply read(Context call) {
    takesNoQuery(call);
    String id = call.pathParam("id");
    @Nullable Present present = kind.present(store, id);
    if (present == null) {
      throw faults.absent(id);
    }
    return reply(200, present.number(), present.document());
  }

  Reply replace(Context call) throws IOException {
    takesNoQuery(call);
    String id = call.pathParam("id");
    @Nullable Present before = kind.present(store, id);
    refuseUnseen(call, id, before);
    var document = read(call, id);
    if (before != null && before.number() > 0) {
      return written(200, store.replace(document, before.number(), AUTHOR));
    }
    try {
      return written(before == null ? 201 : 200, store.create(document, AUTHOR));
    } catch (Refusal refusal) {
      boolean overtaken = refusal.faults().get(0).code() == FaultCode.EXISTS;
      throw overtaken ? faults.thereAlready(id) : refusal;
    }
  }

  private void refuseUnseen(Context call, String id, @Nullable Present before) {
    @Nullable String ifMatch = call.req().getHeader("If-Match");
    if (Conditions.isCreation(call)) {
      if (before != null) {
        throw faults.thereAlready(id);
      }
    } else if (before != null) {
      Conditions.seen(ifMatch, before.number());
    } else if (ifMatch != null) {
      throw faults.gone(id, ifMatch);
    } else {
      throw faults.conditionNeeded(id);
    }
  }

  Reply remove(Context call) {
    takesNoQuery(call);
    String id = call.pathParam("id");
    @Nullable Present now = kind.present(store, id);
    if (now == null) {
      throw faults.absent(id);
    }
    Conditions.seen(call.req().getHeader("If-Match"), now.number());
    if (now.number() == 0) {
      throw faults.builtIn(id);
    }
    store.delete(kind.kind(), id, now.number(), AUTHOR);
    return Reply.empty(204);
  }

  Reply revision(Context call) {
    takesNoQuery(call);
    String id = call.pathParam("id");
    String number = call.pathParam("number");
    @Nullable Stored found =
        number.matches("[1-9][0-9]{0,8}")
            ? store.read(kind.kind(), id, Integer.parseInt(number))
            : null;
    if (found == null || found.document() == null) {
      throw faults.noRevision(id, number, found != null);
    }
    return reply(200, found.number(), found.document());
  }

  private void takesNoQuery(Context call) {
    QueryInput.plain(call.queryString(), longestQuery);
  }

  private Document read(Context call, @Nullable String id) throws IOException {
    var tree = bodies.read(call).tree();
    return new DocumentReader(kitchens.now(), limits).read(kind.kind(), tree, id);
  }

  private Reply written(int status, Stored stored) {
    var document = Objects.requireNonNull(stored.document());
    return reply(status, stored.number(), document)
        .with(HttpHeader.LOCATION, kind.pathOf(stored.id()));
  }

  private static Reply reply(int status, int number, Document document) {
    return Reply.of(status, Reply.JSON, document.json().getBytes(StandardCharsets.UTF_8))
        .ofRevision(number);
  }
}
