package tamis.api.plugin;

import java.util.function.Supplier;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Stands between the program and the code of one plugin. */
public interface Guard {
  /**
   * Runs {@code call}, which works for {@code calculation}.
   *
   * @throws Refusal its own, or one that names the plugin if anything else went wrong
   */
  <T> T run(String calculation, Supplier<T> call);

  /** Whether the plugin is no longer called. */
  default boolean isOff() {
    return false;
  }

  /** That a plugin broke: its name, and nothing of its inside. */
  static Refusal failed(String plugin, String calculation) {
    return new Refusal(
        new Fault(
            FaultCode.PLUGIN_FAILED,
            "",
            calculation,
            null,
            "plugin `"
                + plugin
                + "` failed while working out `"
                + calculation
                + "`; the server's log says more"));
  }
}
