package tamis.plugin.conversion;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;

/** Brings {@code conversion}. */
public final class ConversionPlugin implements Plugin {
  @Override
  public String name() {
    return "conversion";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Conversion());
  }
}
