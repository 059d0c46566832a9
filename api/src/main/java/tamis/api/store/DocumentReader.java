package tamis.api.store;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.Shape;
import tamis.engine.trial.Trial;

/** Reads a document as it is given, before it is kept. */
public final class DocumentReader {
  private static final String ID = "id";

  private final Pantry kitchen;
  private final Limits limits;

  /**
   * @param kitchen in which all that the document names is looked up
   */
  public DocumentReader(Pantry kitchen, Limits limits) {
    this.kitchen = kitchen;
    this.limits = limits;
  }

  /**
   * The document that plain maps and lists stand for.
   *
   * @param id that it is to be kept under, or null if it must say so itself
   * @throws Refusal with all faults
   */
  public Document read(Kind kind, @Nullable Object tree, @Nullable String id) {
    var gathered = new Faults();
    var whole = tree instanceof Map<?, ?> map ? withId(kind, map, id, gathered) : tree;
    @Nullable Document document = gathered.gather("", () -> read(kind, whole));
    gathered.refuseIfAny();
    return Objects.requireNonNull(document);
  }

  private Document read(Kind kind, @Nullable Object tree) {
    var record = new RecordReader(kitchen, limits).read(kind.type(), tree);
    if (record instanceof Formula formula) {
      kitchen.check(formula);
      return Document.of(formula, String.valueOf(formula.id()));
    }
    if (record instanceof Trial trial) {
      return Document.of(trial);
    }
    return record instanceof PriceList prices
        ? Document.of(prices)
        : Document.of((Ingredient) record);
  }

  /** The id may be left out where the address says it, and must not differ from it. */
  private static Object withId(Kind kind, Map<?, ?> given, @Nullable String id, Faults gathered) {
    if (given.containsKey(ID)) {
      if (id != null && !id.equals(given.get(ID))) {
        gathered.add(
            FaultCode.INCONSISTENT,
            "/id",
            "the address says `" + id + "`, the document says `" + given.get(ID) + "`");
      }
      return given;
    }
    if (id == null) {
      var component = Shape.of(kind.type()).component(ID);
      if (component != null && !component.required()) {
        gathered.add(FaultCode.MISSING, "/id", "`id` is missing: lower-case words with hyphens");
      }
      return given;
    }
    var whole = new LinkedHashMap<Object, @Nullable Object>();
    whole.put(ID, id);
    whole.putAll(given);
    return whole;
  }
}
