package tamis.api.http;

import java.util.List;
import tamis.api.version.Versions;
import tamis.engine.record.Described;

/** Whether requests are served, and by what. */
public record Readiness(
    @Described(
            value = "`ready`, or `store-unavailable` as long as the store does not answer",
            example = "ready")
        String status,
    @Described("What changes each on its own") Versions versions,
    @Described("The revision over all documents, as far as it is known") long revision,
    @Described("Plugins that are loaded") List<PluginState> plugins,
    @Described("Jars that were not loaded") List<Refused> refused) {

  /** A plugin that is loaded. */
  public record PluginState(
      @Described(value = "Its name", example = "scaling") String name,
      @Described(value = "The file name of its jar, or `built in`", example = "built in")
          String origin,
      @Described("Calculations that it brings") List<String> calculations,
      @Described("Whether it is called no more, because its calls did not end")
          boolean switchedOff) {}

  /** A jar that was not loaded. */
  public record Refused(
      @Described(value = "Its file name", example = "sourdough.jar") String jar,
      @Described(value = "What is wrong and what to do", example = "is no jar; build it again")
          String why) {}
}
