package tamis.plugin.scaling;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code scaling} and the published changes of cakes at altitude. */
public final class ScalingPlugin implements Plugin {
  @Override
  public String name() {
    return "scaling";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Scaling());
  }

  @Override
  public List<Table> tables() {
    return List.of(AltitudeChange.TABLE);
  }
}
