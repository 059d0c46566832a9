package tamis.api.http;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;

/** A page of a list of documents. */
public record DocumentPage(
    @Described("Documents in the order of their ids") List<DocumentItem> items,
    @Described("Where the next page begins, if there is one") @Nullable String next) {

  /** One document of a list. */
  public record DocumentItem(
      @Described(value = "Its id", example = "brioche") String id,
      @Described(value = "Its title", example = "Brioche") String title,
      @Described(value = "Its newest revision; 0 if it is built in", example = "3") int revision) {}
}
