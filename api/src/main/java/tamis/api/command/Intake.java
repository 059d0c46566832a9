package tamis.api.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import tamis.api.collection.Collection;
import tamis.api.collection.SourceFile;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;

/** Reads a collection of recipes into formulas. */
@Command(
    name = "intake",
    description =
        "Reads text, tables, JSON-LD and pages of the web into formulas; safe to run again.",
    mixinStandardHelpOptions = true,
    exitCodeListHeading = "Exit:%n",
    exitCodeList = {
      "0:every line was understood",
      "1:some lines or files must be looked at",
      "2:wrong use"
    },
    versionProvider = VersionLines.class)
public final class Intake extends ShopCommand {
  @Parameters(
      paramLabel = "FILES",
      arity = "1..*",
      description = "Files (txt, md, csv, json, html) and folders of such files")
  private List<Path> files = List.of();

  @Option(names = "--out", paramLabel = "DIR", description = "Folder of the formulas (formulas)")
  private Path out = Path.of("formulas");

  @Option(names = "--form", paramLabel = "FORM", description = "json, ndjson, jsonld or csv (json)")
  private String form = "json";

  @Option(
      names = "--unresolved",
      paramLabel = "FILE",
      description = "Table of lines to look at (DIR of --out, then .unresolved.csv)")
  private @Nullable Path unresolved;

  @Option(
      names = "--quantities",
      paramLabel = "KIND",
      description = "as-written, grams, us, metric or percent (as-written)")
  private @Nullable String quantities;

  @Option(names = "--factor", paramLabel = "NUMBER", description = "How many times the recipe")
  private @Nullable Double factor;

  @Option(
      names = "--measures",
      paramLabel = "NAME",
      description = "Whose cups and spoons: us, metric, au, uk or jp")
  private @Nullable String measures;

  @Option(
      names = "--language",
      paramLabel = "TAG",
      description = "Language of the collection: en, en-US, en-GB, en-AU, de, fr, it or es")
  private @Nullable String language;

  @Option(
      names = "--charset",
      paramLabel = "NAME",
      description = "How the files are encoded (UTF-8)")
  private @Nullable String charset;

  public Intake(Map<String, String> environment) {
    super(environment);
  }

  @Override
  public Integer call() {
    var settings = settings();
    try (var plugins = Serve.plugins(settings);
        var store = store(settings, plugins)) {
      var calculation = plugins.calculation(Collection.CALCULATION);
      if (calculation == null) {
        throw new WrongUse("no plugin brings the calculation `intake`");
      }
      var limits = settings.server().limits();
      var kitchen = new Pantry(store.shelf(), plugins.fittings(limits));
      try (var collection = Collection.of(task(), calculation, kitchen)) {
        try (var progress = Bar.of("intake")) {
          progress.begin(collection.bytes());
          collection.read(progress);
        }
        return told(collection.troubles(), List.of(collection.told()));
      }
    } catch (Refusal refusal) {
      throw new WrongUse(
          (unresolved == null ? side() : unresolved) + ": " + refusal.faults().get(0).message());
    } catch (IOException | UncheckedIOException broken) {
      throw new WrongUse("a file cannot be read or written: " + broken.getMessage());
    }
  }

  private Collection.Task task() throws IOException {
    for (var file : files) {
      if (!Files.isReadable(file)) {
        throw new WrongUse(file + " is no file or folder that can be read");
      }
    }
    if (Files.exists(out) && !Files.isDirectory(out)) {
      throw new WrongUse("--out must be a folder, was " + out);
    }
    var found = SourceFile.of(files);
    if (found.isEmpty()) {
      throw new WrongUse("no file ends in .txt, .md, .csv, .json, .jsonld or .html there");
    }
    return new Collection.Task(found, out, form(), side(), charset(), asked());
  }

  private Path side() {
    return unresolved == null
        ? out.resolveSibling(out.getFileName() + ".unresolved.csv")
        : unresolved;
  }

  private Collection.Form form() {
    try {
      return Collection.Form.valueOf(form.toUpperCase(Locale.ROOT));
    } catch (IllegalArgumentException unknown) {
      throw new WrongUse("--form must be json, ndjson, jsonld or csv, was " + form);
    }
  }

  private @Nullable Charset charset() {
    try {
      return charset == null ? null : Charset.forName(charset);
    } catch (IllegalCharsetNameException | UnsupportedCharsetException unknown) {
      throw new WrongUse("--charset is not known here: " + charset);
    }
  }

  /** Further inputs of the calculation; each is checked before the first file is read. */
  private Map<String, Object> asked() {
    var asked = new LinkedHashMap<String, Object>();
    put(asked, "quantities", quantities, List.of("as-written", "grams", "us", "metric", "percent"));
    put(asked, "measures", measures, List.of("us", "metric", "au", "uk", "jp"));
    put(
        asked,
        "language",
        language,
        List.of("en", "en-US", "en-GB", "en-AU", "de", "fr", "it", "es"));
    if (factor != null) {
      if (!(factor > 0) || factor > 1_000_000) {
        throw new WrongUse("--factor must be more than 0 and at most 1000000, was " + factor);
      }
      asked.put("to", Map.of("factor", factor));
    }
    return asked;
  }

  private static void put(
      Map<String, Object> asked, String name, @Nullable String value, List<String> allowed) {
    if (value == null) {
      return;
    }
    if (!allowed.contains(value)) {
      throw new WrongUse(
          "--" + name + " must be one of " + String.join(", ", allowed) + ", was " + value);
    }
    asked.put(name, value);
  }
}
