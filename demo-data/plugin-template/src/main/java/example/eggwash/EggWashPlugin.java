package example.eggwash;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code egg-wash} and its table. */
public final class EggWashPlugin implements Plugin {
  @Override
  public String name() {
    return "egg-wash";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new EggWash());
  }

  @Override
  public List<Table> tables() {
    return List.of(EggWash.TABLE);
  }
}
