package tamis.plugin.costing;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;

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
}
