package tamis.engine.note;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.table.Row;

/** Gathers remarks and sources while an answer is worked out. Not for use by several threads. */
public final class Notes {
  private final Set<Remark> remarks = new LinkedHashSet<>();
  private final Map<Fact, Set<String>> facts = new LinkedHashMap<>();

  private record Fact(
      String table, String row, String source, @Nullable String locator, @Nullable String basis) {}

  public void remark(String code, String pointer, String message) {
    remarks.add(new Remark(Remark.Kind.REMARK, code, message, pointer));
  }

  public void estimate(String code, String pointer, String message) {
    remarks.add(new Remark(Remark.Kind.ESTIMATE, code, message, pointer));
  }

  public void caution(String code, String pointer, String message) {
    remarks.add(new Remark(Remark.Kind.CAUTION, code, message, pointer));
  }

  public void add(Remark remark) {
    remarks.add(remark);
  }

  /** What the answer rests on by way of something that told its sources itself, such as a batch. */
  public void cite(Cited source) {
    if (!source.pointers().isEmpty()) {
      pointers(
              new Fact(
                  source.table(), source.row(), source.source(), source.locator(), source.basis()))
          .addAll(source.pointers());
    }
  }

  /** The part of the result at {@code pointer} rests on this row. */
  public void cite(Row row, String pointer) {
    cite(
        row.table(),
        row.key(),
        row.text("source"),
        row.textOrNull("locator"),
        row.textOrNull("basis"),
        pointer);
  }

  /** The part of the result at {@code pointer} rests on this fact. */
  public void cite(
      String table,
      String row,
      String source,
      @Nullable String locator,
      @Nullable String basis,
      String pointer) {
    pointers(new Fact(table, row, source, locator, basis)).add(pointer);
  }

  private Set<String> pointers(Fact fact) {
    return facts.computeIfAbsent(fact, f -> new LinkedHashSet<>());
  }

  public List<Remark> remarks() {
    return List.copyOf(remarks);
  }

  /** Each source once, with all that rests on it. */
  public List<Cited> sources() {
    List<Cited> sources = new ArrayList<>();
    facts.forEach(
        (fact, pointers) ->
            sources.add(
                new Cited(
                    fact.table(),
                    fact.row(),
                    fact.source(),
                    fact.locator(),
                    fact.basis(),
                    List.copyOf(pointers))));
    return sources;
  }
}
