package example.icecreammix;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;
import tamis.engine.table.Table;

/** Brings {@code ice-cream-mix} and its tables. */
public final class IceCreamMixPlugin implements Plugin {
  @Override
  public String name() {
    return "ice-cream-mix";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new IceCreamMix());
  }

  @Override
  public List<Table> tables() {
    return List.of(
        MixTables.SOLUTES,
        MixTables.SYRUPS,
        MixTables.MILK_SOLIDS,
        MixTables.CONSTANTS,
        MixTables.WINDOWS,
        Freezing.CURVE);
  }
}
