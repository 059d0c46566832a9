package tamis.engine.spi;

import java.util.List;
import java.util.Objects;
import tamis.engine.note.Cited;
import tamis.engine.note.Notes;
import tamis.engine.note.Remark;

/**
 * What a calculation answers.
 *
 * @param result a described record
 * @param remarks what should be known although the answer stands
 * @param sources rows of tables that the result rests on
 */
public record Answer<R extends Record>(R result, List<Remark> remarks, List<Cited> sources) {
  public Answer {
    Objects.requireNonNull(result, "result");
    remarks = List.copyOf(remarks);
    sources = List.copyOf(sources);
  }

  public static <R extends Record> Answer<R> of(R result) {
    return new Answer<>(result, List.of(), List.of());
  }

  public static <R extends Record> Answer<R> of(R result, Notes notes) {
    return new Answer<>(result, notes.remarks(), notes.sources());
  }
}
