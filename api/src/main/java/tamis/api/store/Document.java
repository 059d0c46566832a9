package tamis.api.store;

import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.ResultJson;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.price.PriceList;
import tamis.engine.trial.Trial;

/** A document as it is kept: the text that a reader gets, and the record that it is read as. */
public final class Document {
  /** A shop has one list of prices. */
  public static final String PRICES = "prices";

  private final Kind kind;
  private final String id;
  private final String json;
  private volatile @Nullable Record record;
  private volatile @Nullable Set<String> words;

  private Document(Kind kind, String id, String json, @Nullable Record record) {
    this.kind = kind;
    this.id = id;
    this.json = json;
    this.record = record;
  }

  /** A formula under its id. */
  public static Document of(Formula formula, String id) {
    return new Document(Kind.FORMULA, id, json(formula), formula);
  }

  /** An ingredient. */
  public static Document of(Ingredient ingredient) {
    return new Document(Kind.INGREDIENT, ingredient.id(), json(ingredient), ingredient);
  }

  /** All prices. */
  public static Document of(PriceList prices) {
    return new Document(Kind.PRICES, PRICES, json(prices), prices);
  }

  /** A trial. */
  public static Document of(Trial trial) {
    return new Document(Kind.TRIAL, trial.id(), json(trial), trial);
  }

  /** A document that was kept before; it is read when its record is first asked for. */
  static Document kept(Kind kind, String id, String json) {
    return new Document(kind, id, json, null);
  }

  private static String json(Record record) {
    return new String(ResultJson.bytes(record), StandardCharsets.UTF_8);
  }

  public Kind kind() {
    return kind;
  }

  public String id() {
    return id;
  }

  /** The text that a reader gets. */
  public String json() {
    return json;
  }

  /** The same, read. */
  public Record record() {
    @Nullable Record known = record;
    if (known == null) {
      known = KeptJson.record(kind.type(), json);
      record = known;
    }
    return known;
  }

  /** For lists. */
  public String title() {
    if (record() instanceof Formula formula) {
      return Objects.requireNonNullElse(formula.title(), id);
    }
    if (record() instanceof Trial trial) {
      return trial.formula() + ", " + trial.started();
    }
    return record() instanceof Ingredient ingredient ? ingredient.title("en") : id;
  }

  /** Ids of the formulas that it names. */
  public Set<String> uses() {
    return Terms.uses(record());
  }

  /** What it is found by, in lower case. */
  public Set<String> words() {
    @Nullable Set<String> known = words;
    if (known == null) {
      known = Collections.unmodifiableSet(Terms.words(id, record()));
      words = known;
    }
    return known;
  }
}
