package tamis.plugin.pans;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings what has to do with pans, portions and coats. */
public final class PansPlugin implements Plugin {
  @Override
  public String name() {
    return "pans";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(
        new PanVolume(),
        new PanConversion(),
        new TinChoice(),
        new Coating(),
        new CreamReach(),
        new Slices());
  }

  @Override
  public List<Table> tables() {
    return List.of(
        Fill.TABLE,
        DoughTin.TABLE,
        DepthRule.TABLE,
        Slices.SERVINGS,
        ServingChart.TABLE,
        CreamReach.CAKES);
  }
}
