package tamis.plugin.dough;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings baker's percentage and the temperature of the dough. */
public final class DoughPlugin implements Plugin {
  @Override
  public String name() {
    return "dough";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new BakersPercentage(), new DoughTemperature(), new FrictionFactor());
  }

  @Override
  public List<Table> tables() {
    return List.of(DoughConstants.TABLE, DoughConstants.MIXERS);
  }
}
