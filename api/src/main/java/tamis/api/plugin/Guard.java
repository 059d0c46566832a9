package tamis.api.plugin;

import java.util.Arrays;
import java.util.function.Supplier;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Stands between the program and the code of one plugin. */
public interface Guard {
  /** Frames of a stack that the log shows. */
  int MOST_FRAMES = 60;

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

  /** For the log: of a call that called itself a thousand times, the beginning tells enough. */
  static Throwable shortened(Throwable thrown) {
    var frames = thrown.getStackTrace();
    if (frames.length > MOST_FRAMES) {
      thrown.setStackTrace(Arrays.copyOf(frames, MOST_FRAMES));
    }
    return thrown;
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
