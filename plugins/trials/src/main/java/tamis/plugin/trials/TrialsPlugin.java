package tamis.plugin.trials;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings the comparison of trials, and the label of what came out well and is kept. */
public final class TrialsPlugin implements Plugin {
  @Override
  public String name() {
    return "trials";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new TrialComparison(), new ShelfLifeLabel());
  }

  @Override
  public List<Table> tables() {
    return List.of(Scale.TABLE);
  }
}
