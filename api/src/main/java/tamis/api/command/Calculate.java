package tamis.api.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tamis.api.plugin.Plugins;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.QueryInput;
import tamis.api.store.Store;
import tamis.api.stream.FileAnswers;
import tamis.api.stream.LineAnswers;
import tamis.api.stream.Run;
import tamis.api.stream.Share;
import tamis.api.stream.Unusable;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Nearest;
import tamis.engine.spi.Calculation;

/** Calculates every record of a file. */
@Command(
    name = "calculate",
    description = "Calculates every record of a file; interrupted, it goes on where it was.",
    mixinStandardHelpOptions = true,
    exitCodeListHeading = "Exit:%n",
    exitCodeList = {"0:all records are answered", "1:some were rejected", "2:wrong use"},
    versionProvider = VersionLines.class)
public final class Calculate extends ShopCommand {
  @Parameters(index = "0", paramLabel = "NAME", description = "Name of the calculation")
  private String name;

  @Parameters(
      index = "1..*",
      arity = "0..*",
      paramLabel = "DOCUMENT",
      description =
          "Formula documents, or folders of them, in place of --in: a record each,"
              + " kept in FILE of --out, then .records")
  private List<Path> documents = List.of();

  @Option(
      names = "--with",
      paramLabel = "JSON",
      description = "What each record says besides its document: '{\"to\":{\"factor\":2}}'")
  private String with = "{}";

  @Option(names = "--in", paramLabel = "FILE", description = "Records, a JSON input a line")
  private @Nullable Path in;

  @Option(
      names = "--out",
      required = true,
      paramLabel = "FILE",
      description = "Answers, one a line in the order of the records")
  private Path out;

  @Option(
      names = "--rejected",
      paramLabel = "FILE",
      description = "Records without an answer, with the reason (FILE of --out, then .rejected)")
  private @Nullable Path rejected;

  @Option(
      names = "--part",
      paramLabel = "I/N",
      description = "Only part I of N parts of the file, for several machines")
  private String part = Share.WHOLE.toString();

  @Option(
      names = "--query",
      paramLabel = "QUERY",
      description = "How to answer, as in an address: sources=no&units=us")
  private String query = "";

  public Calculate(Map<String, String> environment) {
    super(environment);
  }

  @Override
  public Integer call() {
    var settings = settings();
    var run = run();
    try (var plugins = Serve.plugins(settings);
        var store = store(settings, plugins)) {
      var answers = answers(calculation(plugins), settings, store, plugins);
      var files = new FileAnswers(run, answers);
      try (var progress = Bar.of(name)) {
        files.write(progress);
      }
      return told(rejections(run, files), List.of());
    } catch (Unusable unusable) {
      throw new WrongUse(String.valueOf(unusable.getMessage()));
    } catch (IOException | UncheckedIOException broken) {
      throw new WrongUse(said(broken) + "; the same command goes on from here");
    }
  }

  private static List<String> rejections(Run run, FileAnswers files) {
    return files.rejections() == 0
        ? List.of()
        : List.of(
            files.rejections()
                + " of "
                + files.records()
                + " records were rejected; they are in "
                + run.rejected());
  }

  private Run run() {
    var share = Share.parse(part);
    if (share == null) {
      throw new WrongUse("--part must be such as 1/4, the first of four parts, was " + part);
    }
    if ((in == null) == documents.isEmpty()) {
      throw new WrongUse("name either the records by --in or the documents behind the calculation");
    }
    if (in != null && (!Files.isRegularFile(in) || !Files.isReadable(in))) {
      throw new WrongUse("--in must be a file that can be read, was " + in);
    }
    var parent = out.toAbsolutePath().getParent();
    if (parent == null || !Files.isDirectory(parent)) {
      throw new WrongUse("--out must lie in a directory that is there, was " + out);
    }
    var side = rejected == null ? Run.rejectedBeside(out) : rejected;
    if (side.toAbsolutePath().normalize().equals(out.toAbsolutePath().normalize())) {
      throw new WrongUse("--rejected and --out must be two files, both were " + out);
    }
    return new Run(name, query, in == null ? recorded() : in, share, out, side);
  }

  private Path recorded() {
    Path records = out.resolveSibling(out.getFileName() + ".records");
    try {
      DocumentRecords.write(documents, with, records);
      return records;
    } catch (IOException broken) {
      throw new WrongUse(said(broken));
    }
  }

  private Calculation<?, ?> calculation(Plugins plugins) {
    var calculation = plugins.calculation(name);
    if (calculation == null) {
      throw new WrongUse(
          "no calculation `" + name + "`" + Nearest.suggestion(name, plugins.names()));
    }
    return calculation;
  }

  private <I extends Record, R extends Record> LineAnswers<I, R> answers(
      Calculation<I, R> calculation, Settings settings, Store store, Plugins plugins) {
    var told = settings.server();
    var reading =
        new LineAnswers.Reading(
            told.lineBytes(),
            new JsonLimits(told.nesting(), told.limits().digits()),
            told.limits());
    var kitchen = new Pantry(shelf(store, reading), plugins.fittings(told.limits()));
    try {
      var asked = QueryInput.options(query, calculation, told.queryBytes());
      return LineAnswers.of(calculation, asked, kitchen, plugins.guard(name), reading);
    } catch (Refusal refusal) {
      throw new WrongUse("--query: " + refusal.faults().get(0).message());
    }
  }

  private Shelf shelf(Store store, LineAnswers.Reading reading) {
    try {
      return documents.isEmpty()
          ? store.shelf()
          : new DocumentShelf(
              DocumentRecords.files(documents), store.shelf(), reading.json(), reading.limits());
    } catch (IOException | UncheckedIOException broken) {
      throw new WrongUse(said(broken));
    }
  }

  private static String said(Exception broken) {
    Throwable cause = Objects.requireNonNullElse(broken.getCause(), broken);
    return cause instanceof FileSystemException file
        ? file.getFile()
            + " cannot be used"
            + (file.getReason() == null ? "" : ": " + file.getReason())
        : "a file cannot be read or written: " + cause.getMessage();
  }
}
