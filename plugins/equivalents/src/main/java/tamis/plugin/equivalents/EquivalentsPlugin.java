package tamis.plugin.equivalents;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code equivalents} and the proportions it works with. */
public final class EquivalentsPlugin implements Plugin {
  @Override
  public String name() {
    return "equivalents";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Equivalents());
  }

  @Override
  public List<Table> tables() {
    return List.of(Pair.TABLE, Pair.WITH, Gelatine.BLOOMS);
  }
}
