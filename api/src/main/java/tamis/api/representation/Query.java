package tamis.api.representation;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.record.Shape;

/**
 * A query that was read: what belongs to the input and how to answer.
 *
 * @param tree the input as nested maps, lists and texts
 * @param options how to answer
 * @param faults of the query itself; told together with those of the input
 */
public record Query(Map<String, Object> tree, Options options, List<Fault> faults) {
  private static final String UNITS = "units";

  public Query {
    faults = List.copyOf(faults);
  }

  /**
   * The input that the query holds.
   *
   * @throws Refusal with all faults of query and input
   */
  public <I extends Record> I input(Class<I> type, References references, Limits limits) {
    RecordReader reader = new RecordReader(references, limits, true, options.decimalComma());
    return read(reader, type, tree);
  }

  /**
   * The input that a body holds; the query says how to answer.
   *
   * @throws Refusal with all faults of query and input
   */
  public <I extends Record> I input(
      Class<I> type, @Nullable Object body, References references, Limits limits) {
    return read(new RecordReader(references, limits), type, body);
  }

  private <I extends Record> I read(RecordReader reader, Class<I> type, @Nullable Object body) {
    List<Fault> gathered = new ArrayList<>(faults);
    @Nullable I input = null;
    try {
      input = reader.read(type, withUnits(type, body, gathered));
    } catch (Refusal refusal) {
      gathered.addAll(refusal.faults());
    }
    if (input == null || !gathered.isEmpty()) {
      throw new Refusal(gathered);
    }
    return input;
  }

  /** The units to display are part of the input of those calculations that display any. */
  private @Nullable Object withUnits(
      Class<? extends Record> type, @Nullable Object body, List<Fault> gathered) {
    String units = options.units();
    if (units == null) {
      return body;
    }
    if (Shape.of(type).component(UNITS) == null) {
      gathered.add(
          new Fault(
              FaultCode.NOT_ALLOWED,
              "/" + UNITS,
              units,
              "nothing: leave it out",
              "this calculation displays no figures in other units, so `units` says nothing here"));
      return body;
    }
    if (!(body instanceof Map<?, ?> map)) {
      return body;
    }
    if (map.containsKey(UNITS)) {
      gathered.add(
          Fault.of(
              FaultCode.DUPLICATE_NAME, "/" + UNITS, "`units` stands in the query and the body"));
    }
    Map<Object, @Nullable Object> all = new LinkedHashMap<>(map);
    all.put(UNITS, units);
    return all;
  }
}
