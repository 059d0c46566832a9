package tamis.engine.spi;

import java.util.List;
import tamis.engine.table.Table;

/**
 * What a plugin brings. Found by {@link java.util.ServiceLoader}; made once, when the program
 * starts, on one thread. Implementations have a public constructor without parameters.
 */
public interface Plugin {
  /** Lower-case words with hyphens, unique among the plugins that are loaded. */
  String name();

  /** Its calculations; the same list at each call. */
  default List<Calculation<?, ?>> calculations() {
    return List.of();
  }

  /** Tables that it brings, each row with its source; shown under {@code /v1/tables}. */
  default List<Table> tables() {
    return List.of();
  }
}
