package tamis.api.http;

import io.javalin.http.Context;
import java.util.ArrayList;
import java.util.Comparator;
import tamis.api.http.DocumentPage.DocumentItem;
import tamis.api.http.RevisionPage.RevisionItem;
import tamis.api.representation.ResultJson;
import tamis.api.store.Store;

/** Lists the documents of one kind, and the revisions of one document. */
final class DocumentLists {
  private final DocumentKind kind;
  private final DocumentFaults faults;
  private final Store store;
  private final int longestQuery;

  DocumentLists(DocumentKind kind, Store store, ServerSettings settings) {
    this.kind = kind;
    this.faults = new DocumentFaults(kind, store);
    this.store = store;
    this.longestQuery = settings.queryBytes();
  }

  /** The shop's own and the built-in documents; both lists are by id, so the page is, too. */
  Reply list(Context call) {
    var paging = Paging.of(call.queryString(), longestQuery, "q", "limit", "cursor");
    int most = paging.limit() + 1;
    var items = new ArrayList<DocumentItem>();
    for (var own : store.list(kind.kind(), paging.words(), most, paging.after()).rows()) {
      items.add(new DocumentItem(own.id(), own.title(), own.number()));
    }
    for (var given :
        kind.builtIn().get().list(kind.kind(), paging.words(), most, paging.after()).rows()) {
      if (store.read(kind.kind(), given.id()) == null) {
        items.add(new DocumentItem(given.id(), given.title(), 0));
      }
    }
    items.sort(Comparator.comparing(DocumentItem::id));
    return page(new DocumentPage(paging.shown(items), paging.next(items, DocumentItem::id)));
  }

  Reply revisions(Context call) {
    String id = call.pathParam("id");
    var paging = Paging.of(call.queryString(), longestQuery, "limit", "cursor");
    int after = paging.afterNumber();
    var all = store.revisions(kind.kind(), id);
    if (all.isEmpty()) {
      throw faults.absent(id);
    }
    var items =
        all.stream()
            .filter(one -> one.number() > after)
            .limit(paging.limit() + 1L)
            .map(
                one ->
                    new RevisionItem(
                        one.number(), one.written().toString(), one.author(), one.isDeleted()))
            .toList();
    return page(
        new RevisionPage(paging.shown(items), paging.next(items, one -> "" + one.revision())));
  }

  private static Reply page(Record page) {
    return Reply.json(ResultJson.bytes(page));
  }
}
