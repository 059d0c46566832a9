package tamis.plugin.timeline;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code timeline}, what stations usually hold, and how a stage that is early is held. */
public final class TimelinePlugin implements Plugin {
  @Override
  public String name() {
    return "timeline";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Timeline());
  }

  @Override
  public List<Table> tables() {
    return List.of(Stations.TABLE, Holding.TABLE, Rule.TABLE);
  }
}
