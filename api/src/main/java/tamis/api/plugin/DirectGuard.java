package tamis.api.plugin;

import java.util.function.Supplier;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.engine.fault.Refusal;

/**
 * Calls on the caller's own thread: for our plugins, whose work ends by the limits on its input.
 */
record DirectGuard(String plugin) implements Guard {
  private static final Logger LOG = LoggerFactory.getLogger(DirectGuard.class);

  @Override
  public <T> T run(String calculation, Supplier<T> call) {
    try {
      return call.get();
    } catch (Refusal refusal) {
      throw refusal;
    } catch (RuntimeException | LinkageError | StackOverflowError broken) {
      LOG.error("plugin {} failed at {}", plugin, calculation, Guard.shortened(broken));
      throw Guard.failed(plugin, calculation);
    }
  }
}
