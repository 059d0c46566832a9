package tamis.plugin.balancing;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings the balancing of mixes, with the table of relative sweetness. */
public final class BalancingPlugin implements Plugin {
  @Override
  public String name() {
    return "balancing";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Balancing());
  }

  @Override
  public List<Table> tables() {
    return List.of(Sweetness.TABLE);
  }
}
