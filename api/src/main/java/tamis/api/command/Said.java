package tamis.api.command;

import java.util.List;
import picocli.CommandLine.Model.CommandSpec;

/** What a command has to say to a person: lines on stderr, for stdout may be what it gives. */
final class Said {
  private Said() {}

  static void lines(CommandSpec spec, List<String> lines) {
    var err = spec.commandLine().getErr();
    lines.forEach(line -> err.println("tamis: " + line));
    err.flush();
  }
}
