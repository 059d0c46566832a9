package tamis.api.command;

import java.io.IOException;
import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Spec;
import tamis.api.store.Load;
import tamis.api.store.UnusableStore;
import tamis.engine.fault.Refusal;

/** A command about the whole store. */
abstract class StoreCommand implements Callable<Integer> {
  private static final int DONE = 0;
  private static final int REJECTED = 1;

  private final Map<String, String> environment;

  @Spec private CommandSpec spec;

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Directory of the shop's documents (tamis-data)")
  private @Nullable String data;

  StoreCommand(Map<String, String> environment) {
    this.environment = environment;
  }

  @Override
  public final Integer call() throws IOException {
    var options = new EnumMap<Setting, String>(Setting.class);
    if (data != null) {
      options.put(Setting.DATA, data);
    }
    try {
      run(new Settings(options, environment));
      return DONE;
    } catch (UnusableStore unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    } catch (Refusal unavailable) {
      throw new WrongUse(unavailable.faults().get(0).message());
    } catch (Load.Rejected rejected) {
      Said.lines(spec, rejected.reasons());
      tell("nothing was kept");
      return REJECTED;
    }
  }

  abstract void run(Settings settings) throws IOException;

  /** Tells what was done. */
  final void tell(String done) {
    Said.lines(spec, List.of(done));
  }

  static Path path(String text) {
    try {
      return Path.of(text);
    } catch (InvalidPathException unreadable) {
      throw new WrongUse(text + " is no path");
    }
  }
}
