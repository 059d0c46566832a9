package tamis.api.plugin;

import java.util.Collections;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.api.representation.Offered;
import tamis.engine.kitchen.Calculator;
import tamis.engine.kitchen.Pantry;
import tamis.engine.record.Limits;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Table;

/** The plugins in use, and what they offer by name. Does not change while the program runs. */
public final class Plugins implements AutoCloseable, Calculator {
  private static final Logger LOG = LoggerFactory.getLogger(Plugins.class);

  private final List<LoadedPlugin> loaded;
  private final List<RefusedJar> refused;
  private final List<AutoCloseable> open;
  private final Map<String, Entry> byCalculation = new TreeMap<>();
  private @Nullable Map<String, Table> tables;

  private record Entry(LoadedPlugin plugin, Calculation<?, ?> calculation) {}

  Plugins(List<LoadedPlugin> loaded, List<RefusedJar> refused, List<AutoCloseable> open) {
    this.loaded = List.copyOf(loaded);
    this.refused = List.copyOf(refused);
    this.open = List.copyOf(open);
    for (var plugin : loaded) {
      plugin.calculations().forEach(c -> byCalculation.put(c.name(), new Entry(plugin, c)));
    }
  }

  public List<LoadedPlugin> loaded() {
    return loaded;
  }

  public List<RefusedJar> refused() {
    return refused;
  }

  /** All tables, those of the engine first. Most are large: they are read when first asked for. */
  public synchronized Map<String, Table> tables() {
    var known = tables;
    if (known == null) {
      var all = new LinkedHashMap<String, Table>();
      Pantry.builtInTables().forEach(table -> all.put(table.name(), table));
      loaded.forEach(plugin -> plugin.tables().get().forEach(t -> all.put(t.name(), t)));
      known = Collections.unmodifiableMap(all);
      tables = known;
    }
    return known;
  }

  /** All calculations by name, in the order of their names. */
  public List<Offered> offered() {
    return byCalculation.values().stream()
        .map(entry -> new Offered(entry.plugin().name(), entry.calculation()))
        .toList();
  }

  /** The calculation of this name, or null. */
  public @Nullable Calculation<?, ?> calculation(String name) {
    var entry = byCalculation.get(name);
    return entry == null ? null : entry.calculation();
  }

  public Set<String> names() {
    return byCalculation.keySet();
  }

  /** Names of the calculations that are called no more. */
  public Set<String> switchedOff() {
    return byCalculation.entrySet().stream()
        .filter(entry -> entry.getValue().plugin().guard().isOff())
        .map(Map.Entry::getKey)
        .collect(Collectors.toSet());
  }

  /** Changes when another set of plugins is loaded. */
  public String fingerprint() {
    return loaded.stream()
        .map(plugin -> plugin.name() + " " + plugin.version())
        .collect(Collectors.joining(", "));
  }

  /** What stands before the plugin that offers this calculation. */
  public Guard guard(String calculation) {
    var entry = byCalculation.get(calculation);
    if (entry == null) {
      throw new IllegalArgumentException(calculation);
    }
    return entry.plugin().guard();
  }

  /** What kitchens are fitted with. */
  public Pantry.Fittings fittings(Limits limits) {
    var calculations = new HashMap<String, Calculation<?, ?>>();
    byCalculation.forEach((name, entry) -> calculations.put(name, entry.calculation()));
    return new Pantry.Fittings(calculations, this::tables, limits, this);
  }

  /** Runs what one calculation asks of another, guarded as every call is. */
  @Override
  public <I extends Record, R extends Record> Answer<R> run(
      Calculation<I, R> calculation, I input, Kitchen kitchen) {
    return guard(calculation.name())
        .run(calculation.name(), () -> calculation.calculate(input, kitchen));
  }

  @Override
  public void close() {
    for (var one : open) {
      try {
        one.close();
      } catch (Exception stays) {
        LOG.debug("a copy of a plugin stays until the temporary files are cleared", stays);
      }
    }
  }
}
