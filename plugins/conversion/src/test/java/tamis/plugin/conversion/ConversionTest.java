package tamis.plugin.conversion;

import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class ConversionTest extends CalculationContract<Conversion.Input, Conversion.Result> {
  @Override
  protected Calculation<Conversion.Input, Conversion.Result> calculation() {
    return new Conversion();
  }

  @Override
  protected Plugin plugin() {
    return new ConversionPlugin();
  }
}
