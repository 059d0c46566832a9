package tamis.api.plugin;

import java.util.List;
import java.util.function.Supplier;
import tamis.engine.spi.Calculation;
import tamis.engine.table.Table;

/**
 * A plugin in use.
 *
 * @param name its own
 * @param origin the file name of its jar, or {@code built in}
 * @param version that of the program, or a hash of its jar
 * @param calculations that it brings
 * @param tables that it brings; those of ours are read when the first is asked for
 * @param guard by which it is called
 */
public record LoadedPlugin(
    String name,
    String origin,
    String version,
    List<Calculation<?, ?>> calculations,
    Supplier<List<Table>> tables,
    Guard guard) {
  static final String BUILT_IN = "built in";

  public LoadedPlugin {
    calculations = List.copyOf(calculations);
  }
}
