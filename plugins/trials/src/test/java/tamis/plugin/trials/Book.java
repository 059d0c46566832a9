package tamis.plugin.trials;

import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;
import tamis.engine.trial.Trial;

/** A shelf with formulas in several revisions and trials, written in short. */
final class Book implements Shelf {
  private final Map<String, Formula> formulas = new LinkedHashMap<>();
  private final Map<String, Trial> trials = new LinkedHashMap<>();

  static Map<String, Object> map(Object... namesAndValues) {
    Map<String, Object> map = new LinkedHashMap<>();
    for (int i = 0; i < namesAndValues.length; i += 2) {
      map.put((String) namesAndValues[i], namesAndValues[i + 1]);
    }
    return map;
  }

  static <T extends Record> T read(Class<T> type, Map<String, ?> tree) {
    return new RecordReader(References.UNCHECKED, Limits.usual()).read(type, tree);
  }

  /**
   * A cream of two revisions: syrup 116 to 121 °C (115 to 120 in the second), butter 18 to 21 °C.
   */
  static Book ofCream() {
    Book book = new Book();
    book.formula("cream@1", "116 °C", "121 °C");
    book.formula("cream@2", "115 °C", "120 °C");
    return book;
  }

  private void formula(String ref, String low, String high) {
    List<Object> lines =
        List.of(
            map("ingredient", "sugar-granulated", "quantity", "300 g", "stage", "syrup"),
            map("ingredient", "butter-unsalted", "quantity", "400 g", "stage", "mix"),
            map("ingredient", "salt", "quantity", "as needed", "stage", "mix"));
    List<Object> stages =
        List.of(
            map("id", "temper", "target", target("butter", "18 °C", "21 °C"), "duration", "90 min"),
            map("id", "syrup", "target", target("sugar-syrup", low, high), "duration", "10 min"),
            map(
                "id",
                "mix",
                "after",
                List.of("temper", "syrup"),
                "target",
                target("cream", "21 °C", "24 °C")),
            map("id", "rest", "duration", "20 min"));
    Map<String, Object> formula =
        map(
            "id",
            ref.split("@")[0],
            "title",
            "Cream",
            "measures",
            "metric",
            "lines",
            lines,
            "stages",
            stages,
            "shelfLife",
            List.of(map("at", "4 °C", "for", "5 d")));
    formulas.put(ref, read(Formula.class, formula));
  }

  static Map<String, Object> target(String kind, String low, String high) {
    return map("kind", kind, "measure", "temperature", "low", low, "high", high);
  }

  Book with(String ref, Map<String, Object> formula) {
    formulas.put(ref, read(Formula.class, formula));
    return this;
  }

  /**
   * {@code temper 19; syrup 118; mix 17 22} read in this order, ten minutes apart; a word instead
   * of a number is a symptom.
   */
  Book trial(String id, String ref, String result, String readings, Object... more) {
    List<Object> observations = new ArrayList<>();
    int minute = 0;
    for (String stage : readings.isEmpty() ? new String[0] : readings.split("; ")) {
      String[] words = stage.split(" ");
      for (int i = 1; i < words.length; i++) {
        minute += 10;
        Map<String, Object> one =
            map(
                "id",
                "o" + minute,
                "stage",
                words[0],
                "at",
                String.format("2026-04-11T%02d:%02d", 8 + minute / 60, minute % 60));
        if (words[i].matches("[0-9.]+")) {
          one.put("measure", "temperature");
          one.put("value", words[i] + " °C");
        } else {
          one.put("symptom", words[i]);
        }
        observations.add(one);
      }
    }
    Map<String, Object> trial =
        map("id", id, "formula", ref, "started", "2026-04-11T08:00", "observations", observations);
    if (!result.isEmpty()) {
      trial.put("result", result);
    }
    trial.putAll(map(more));
    trials.put(id, read(Trial.class, trial));
    return this;
  }

  Kitchen kitchen(Plugin... plugins) {
    List<Plugin> all = new ArrayList<>(List.of(plugins));
    all.add(new TrialsPlugin());
    return new Pantry(this, Pantry.Fittings.of(all));
  }

  Set<String> trialIds() {
    return trials.keySet();
  }

  @Override
  public long revision() {
    return 1;
  }

  @Override
  public @Nullable Formula formula(String id, @Nullable Integer revision) {
    int newest = revision == null ? 9 : revision;
    for (int i = newest; i > 0; i--) {
      Formula found = formulas.get(id + "@" + i);
      if (found != null || revision != null) {
        return found;
      }
    }
    return null;
  }

  @Override
  public @Nullable Ingredient ingredient(String id) {
    return null;
  }

  @Override
  public Set<String> ingredientsNamed(String folded) {
    return Set.of();
  }

  @Override
  public Collection<String> formulaIdsNear(String id) {
    return List.of();
  }

  @Override
  public @Nullable Trial trial(String id) {
    return trials.get(id);
  }

  @Override
  public List<Trial> trialsOf(String formula) {
    return trials.values().stream()
        .filter(trial -> Objects.equals(trial.formula().id(), formula))
        .sorted(Comparator.comparing(Trial::started).thenComparing(Trial::id))
        .toList();
  }
}
