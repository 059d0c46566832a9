package tamis.plugin.scaling;

import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class ScalingTest extends CalculationContract<Scaling.Input, Scaling.Result> {
  @Override
  protected Calculation<Scaling.Input, Scaling.Result> calculation() {
    return new Scaling();
  }

  @Override
  protected Plugin plugin() {
    return new ScalingPlugin();
  }
}
