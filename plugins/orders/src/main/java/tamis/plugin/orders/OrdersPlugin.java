package tamis.plugin.orders;

import java.util.List;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Plugin;

/** Brings what a shop asks of its orders. */
public final class OrdersPlugin implements Plugin {
  @Override
  public String name() {
    return "orders";
  }

  @Override
  public List<Calculation<?, ?>> calculations() {
    return List.of(new Production(), new Quote());
  }
}
