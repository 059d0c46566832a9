package tamis.plugin.costing;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings what things cost. */
public final class CostingPlugin implements Plugin {
  @Override
  public String name() {
    return "costing";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Cost());
  }

  @Override
  public List<Table> tables() {
    return List.of(ProduceYields.TABLE);
  }
}
