package tamis.api.store;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Which formulas are made with which. */
final class Uses {
  private Uses() {}

  /** Ids of the formulas that use this one now. */
  static List<String> now(Store store, String formula) {
    List<String> users = new ArrayList<>();
    for (String id : store.users(Kind.FORMULA, formula)) {
      @Nullable Stored user = store.read(Kind.FORMULA, id);
      @Nullable Document document = user == null ? null : user.document();
      if (document != null && document.uses().contains(formula)) {
        users.add(id);
      }
    }
    return users;
  }

  /**
   * Refuses a formula that is made with one that is not there: it was taken away since the document
   * was read.
   */
  static void refuseMissing(Store store, Document document) {
    Set<String> uses = document.kind() == Kind.FORMULA ? document.uses() : Set.of();
    for (String id : uses) {
      if (!id.equals(document.id()) && store.read(Kind.FORMULA, id) == null) {
        throw StoreFaults.gone(id, document.id());
      }
    }
  }
}
