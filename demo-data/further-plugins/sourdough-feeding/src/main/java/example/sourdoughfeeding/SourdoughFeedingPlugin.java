package example.sourdoughfeeding;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code sourdough-feeding} and its tables. */
public final class SourdoughFeedingPlugin implements Plugin {
  @Override
  public String name() {
    return "sourdough-feeding";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new SourdoughFeeding());
  }

  @Override
  public List<Table> tables() {
    return List.of(SourdoughFeeding.HOURS, SourdoughFeeding.FACTORS);
  }
}
