package tamis.api.http;

import io.javalin.http.Context;
import java.io.IOException;
import java.util.HashSet;
import java.util.Set;
import org.eclipse.jetty.http.HttpHeader;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.QueryInput;
import tamis.api.representation.ResultJson;
import tamis.api.store.Document;
import tamis.api.store.DocumentReader;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.api.store.Trials;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.trial.Observation;
import tamis.engine.trial.Trial;

/**
 * Reads and changes trials. Their tags change with every observation, so that nobody replaces a
 * trial over a reading that they have not seen.
 */
final class TrialDocuments {
  private static final String AUTHOR = "local";

  private final DocumentKind kind;
  private final DocumentFaults faults;
  private final Store store;
  private final Kitchens kitchens;
  private final Bodies bodies;
  private final Limits limits;
  private final int longestQuery;

  TrialDocuments(
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
    return created(document(call, null, null));
  }

  private Reply created(Document document) {
    store.create(document, AUTHOR);
    return whole(201, there(document.id()));
  }

  Reply read(Context call) {
    takesNoQuery(call);
    return whole(200, there(call.pathParam("id")));
  }

  Reply replace(Context call) throws IOException {
    takesNoQuery(call);
    String id = call.pathParam("id");
    Trials.@Nullable Whole before = Trials.read(store, id);
    @Nullable String ifMatch = call.req().getHeader("If-Match");
    if (before == null) {
      if (!Conditions.isCreation(call)) {
        throw ifMatch == null ? faults.conditionNeeded(id) : faults.gone(id, ifMatch);
      }
      return created(document(call, id, null), id);
    }
    if (Conditions.isCreation(call)) {
      throw faults.thereAlready(id);
    }
    Conditions.seen(ifMatch, before.version());
    var document = document(call, id, before.trial());
    keepsAll(before.trial(), document);
    store.replaceTrial(document, before.number(), before.added(), AUTHOR);
    return whole(200, there(id));
  }

  private Reply created(Document document, String id) {
    try {
      return created(document);
    } catch (Refusal refusal) {
      boolean overtaken = refusal.faults().get(0).code() == FaultCode.EXISTS;
      throw overtaken ? faults.thereAlready(id) : refusal;
    }
  }

  Reply remove(Context call) {
    takesNoQuery(call);
    var now = there(call.pathParam("id"));
    Conditions.seen(call.req().getHeader("If-Match"), now.version());
    store.delete(Kind.TRIAL, now.trial().id(), now.number(), AUTHOR);
    return Reply.empty(204);
  }

  Reply revision(Context call) {
    takesNoQuery(call);
    String id = call.pathParam("id");
    String number = call.pathParam("number");
    Trials.@Nullable Whole whole =
        number.matches("[1-9][0-9]{0,8}") ? Trials.read(store, id, Integer.parseInt(number)) : null;
    if (whole == null) {
      throw faults.noRevision(id, number, false);
    }
    return whole(200, whole);
  }

  Reply observations(Context call) {
    takesNoQuery(call);
    var whole = there(call.pathParam("id"));
    return Reply.json(ResultJson.bytes(new ObservationList(whole.trial().observations())))
        .ofVersion(whole.version());
  }

  Reply observe(Context call) throws IOException {
    takesNoQuery(call);
    String id = call.pathParam("id");
    var trial = there(id).trial();
    var given =
        new RecordReader(kitchens.now(), limits).read(Observation.class, bodies.read(call).tree());
    if (!trial.observations().contains(given)) {
      var faults = new Faults();
      new NewObservations(trial, store).check(given, "", faults);
      faults.refuseIfAny();
    }
    var observed = store.observe(id, given, AUTHOR);
    return Reply.of(
            observed.isNew() ? 201 : 200, Reply.JSON, ResultJson.bytes(observed.observation()))
        .with(HttpHeader.LOCATION, kind.pathOf(id) + "/observations");
  }

  private Document document(Context call, @Nullable String id, @Nullable Trial before)
      throws IOException {
    var read =
        new DocumentReader(kitchens.now(), limits).read(Kind.TRIAL, bodies.read(call).tree(), id);
    if (!(read.record() instanceof Trial trial)) {
      return read;
    }
    var pinned = Pinned.of(trial, before, store);
    checkNew(pinned, before);
    return Document.of(pinned);
  }

  private void checkNew(Trial trial, @Nullable Trial before) {
    var kept = before == null ? Set.<Observation>of() : Set.copyOf(before.observations());
    var observations = new NewObservations(trial, store);
    var faults = new Faults();
    for (int i = 0; i < trial.observations().size(); i++) {
      var one = trial.observations().get(i);
      if (!kept.contains(one)) {
        observations.check(one, "/observations/" + i, faults);
      }
    }
    faults.refuseIfAny();
  }

  /** What was observed is observed: a trial that replaces another has all that came to that one. */
  private static void keepsAll(Trial before, Document document) {
    if (!(document.record() instanceof Trial trial)) {
      return;
    }
    var kept = new HashSet<>(trial.observations());
    var changed = new Faults();
    for (Observation one : before.observations()) {
      if (!kept.contains(one)) {
        changed.add(
            new Fault(
                FaultCode.INCONSISTENT,
                "/observations",
                one.id(),
                null,
                "observation `"
                    + one.id()
                    + "` is there already and is neither changed nor taken away; add another that"
                    + " says what is right"));
      }
    }
    changed.refuseIfAny();
  }

  private Trials.Whole there(String id) {
    Trials.@Nullable Whole whole = Trials.read(store, id);
    if (whole == null) {
      throw faults.absent(id);
    }
    return whole;
  }

  private Reply whole(int status, Trials.Whole whole) {
    var reply =
        Reply.of(status, Reply.JSON, ResultJson.bytes(whole.trial())).ofVersion(whole.version());
    return status == 201 ? reply.with(HttpHeader.LOCATION, kind.pathOf(whole.trial().id())) : reply;
  }

  private void takesNoQuery(Context call) {
    QueryInput.plain(call.queryString(), longestQuery);
  }
}
