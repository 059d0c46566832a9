package tamis.api;

import java.io.PrintWriter;
import java.util.Map;
import java.util.Objects;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Spec;
import tamis.api.command.Backups;
import tamis.api.command.Calculate;
import tamis.api.command.Export;
import tamis.api.command.Import;
import tamis.api.command.Intake;
import tamis.api.command.Restore;
import tamis.api.command.Serve;
import tamis.api.command.VersionLines;
import tamis.api.command.WrongUse;

/** The command line: exit 0 done, 1 some records rejected, 2 wrong use. */
@Command(
    name = "tamis",
    description = "Answers what a formula asks for, weighs, costs and contains.",
    mixinStandardHelpOptions = true,
    versionProvider = VersionLines.class)
public final class Main implements Runnable {

  @Spec private CommandSpec spec;

  public static void main(String[] arguments) {
    System.exit(commandLine(System.getenv()).execute(arguments));
  }

  static CommandLine commandLine(Map<String, String> environment) {
    return new CommandLine(new Main())
        .addSubcommand(new Serve(environment))
        .addSubcommand(new Calculate(environment))
        .addSubcommand(new Intake(environment))
        .addSubcommand(new Backups(environment))
        .addSubcommand(new Restore(environment))
        .addSubcommand(new Export(environment))
        .addSubcommand(new Import(environment))
        .setParameterExceptionHandler(
            (wrongUse, arguments) -> oneLine(wrongUse.getCommandLine(), wrongUse))
        .setExecutionExceptionHandler(
            (thrown, line, parsed) -> {
              if (thrown instanceof WrongUse) {
                return oneLine(line, thrown);
              }
              throw thrown;
            });
  }

  @Override
  public void run() {
    throw new ParameterException(spec.commandLine(), "No command was given");
  }

  private static int oneLine(CommandLine line, Exception wrongUse) {
    String said = Objects.requireNonNullElse(wrongUse.getMessage(), "wrong use");
    PrintWriter err = line.getErr();
    err.println("tamis: " + said.lines().findFirst().orElse(said) + " (see --help)");
    err.flush();
    return line.getCommandSpec().exitCodeOnInvalidInput();
  }
}
