package tamis.api.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Shelf;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.trial.Trial;

/**
 * Formula documents of a folder in front of a shop's own: a formula that takes up another of the
 * same folder finds it there. Only ids are kept; a document is read when it is taken up.
 */
final class DocumentShelf implements Shelf {
  private static final String ID = "id";

  private final Map<String, Path> files = new HashMap<>();
  private final Shelf behind;
  private final JsonLimits json;
  private final Limits limits;

  /**
   * @throws WrongUse if two documents have one id
   */
  DocumentShelf(List<Path> documents, Shelf behind, JsonLimits json, Limits limits) {
    this.behind = behind;
    this.json = json;
    this.limits = limits;
    for (Path file : documents) {
      String id = id(tree(file));
      @Nullable Path other = id == null ? null : files.putIfAbsent(id, file);
      if (other != null) {
        throw new WrongUse("formula `" + id + "` stands twice: in " + other + " and in " + file);
      }
    }
  }

  private static @Nullable String id(@Nullable Object tree) {
    return tree instanceof Map<?, ?> map && map.get(ID) instanceof String id ? id : null;
  }

  /** What is no JSON names no formula; as a record it is rejected with the reason. */
  private @Nullable Object tree(Path file) {
    try {
      return StrictJson.tree(Files.readAllBytes(file), json);
    } catch (Refusal unreadable) {
      return null;
    } catch (IOException unreadable) {
      throw new UncheckedIOException(unreadable);
    }
  }

  @Override
  public @Nullable Formula formula(String id, @Nullable Integer revision) {
    @Nullable Path file = revision == null ? files.get(id) : null;
    return file == null
        ? behind.formula(id, revision)
        : new RecordReader(References.UNCHECKED, limits).read(Formula.class, tree(file));
  }

  @Override
  public Collection<String> formulaIdsNear(String id) {
    Set<String> near = new LinkedHashSet<>(files.keySet());
    near.addAll(behind.formulaIdsNear(id));
    return near;
  }

  @Override
  public long revision() {
    return behind.revision();
  }

  @Override
  public @Nullable Ingredient ingredient(String id) {
    return behind.ingredient(id);
  }

  @Override
  public Set<String> ingredientsNamed(String folded) {
    return behind.ingredientsNamed(folded);
  }

  @Override
  public PriceList prices() {
    return behind.prices();
  }

  @Override
  public @Nullable Trial trial(String id) {
    return behind.trial(id);
  }

  @Override
  public List<Trial> trialsOf(String formula) {
    return behind.trialsOf(formula);
  }
}
