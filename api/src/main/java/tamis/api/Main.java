package tamis.api;

import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;

/** The command line: exit 0 done, 1 some records rejected, 2 wrong use. */
@Command(
    name = "tamis",
    description = "Answers what a formula asks for, weighs, costs and contains.",
    mixinStandardHelpOptions = true,
    versionProvider = Version.class)
public final class Main implements Runnable {

  @Spec private CommandSpec spec;

  public static void main(String[] arguments) {
    System.exit(commandLine().execute(arguments));
  }

  static CommandLine commandLine() {
    return new CommandLine(new Main()).setParameterExceptionHandler(Main::oneLine);
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "No command was given");
  }

  private static int oneLine(ParameterException wrongUse, String[] arguments) {
    var said = Objects.requireNonNullElse(wrongUse.getMessage(), "wrong use");
    wrongUse
        .getCommandLine()
        .getErr()
        .println("tamis: " + said.lines().findFirst().orElse(said) + " (see --help)");
    return wrongUse.getCommandLine().getCommandSpec().exitCodeOnInvalidInput();
  }
}
