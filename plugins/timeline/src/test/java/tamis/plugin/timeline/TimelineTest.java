package tamis.plugin.timeline;

import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class TimelineTest extends CalculationContract<Timeline.Input, Timeline.Result> {
  @Override
  protected Calculation<Timeline.Input, Timeline.Result> calculation() {
    return new Timeline();
  }

  @Override
  protected Plugin plugin() {
    return new TimelinePlugin();
  }
}
