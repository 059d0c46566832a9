package tamis.api.command;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.Charset;
import java.nio.charset.IllegalCharsetNameException;
import java.nio.charset.UnsupportedCharsetException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.concurrent.Callable;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;
import tamis.api.collection.Collection;
import tamis.api.collection.SourceFile;
import tamis.api.plugin.Plugins;
import tamis.api.store.MemoryStore;
import tamis.api.store.Store;
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
public final class Intake implements Callable<Integer> {
  private final Map<String, String> environment;

  @Spec private CommandSpec spec;

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

  @Option(
      names = "--data",
      paramLabel = "DIR",
      description = "Directory of the shop's documents (none: only what is built in)")
  private @Nullable String data;

  @Option(names = "--demo", description = "Read with the demo data's ingredients")
  private boolean demo;

  @Option(names = "--plugins", paramLabel = "DIR", description = "Directory of plugin jars")
  private @Nullable String pluginJars;

  public Intake(Map<String, String> environment) {
    this.environment = environment;
  }

  @Override
  public Integer call() {
    var settings = new Settings(options(), environment);
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
        return told(collection);
      }
    } catch (Refusal refusal) {
      throw new WrongUse(
          (unresolved == null ? side() : unresolved) + ": " + refusal.faults().get(0).message());
    } catch (IOException | UncheckedIOException broken) {
      throw new WrongUse("a file cannot be read or written: " + broken.getMessage());
    }
  }

  private int told(Collection collection) {
    var err = spec.commandLine().getErr();
    collection.troubles().forEach(trouble -> err.println("tamis: " + trouble));
    err.println("tamis: " + collection.told());
    err.flush();
    return collection.troubles().isEmpty() ? 0 : 1;
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

  private Store store(Settings settings, Plugins plugins) {
    if (demo && data != null) {
      throw new WrongUse("--data and --demo exclude each other");
    }
    if (demo) {
      return Shelves.demo(plugins);
    }
    return data != null || settings.isStoreNamed()
        ? Shelves.named(settings)
        : new MemoryStore(Clock.systemUTC());
  }

  private Map<Setting, String> options() {
    var options = new EnumMap<Setting, String>(Setting.class);
    if (data != null) {
      options.put(Setting.DATA, data);
    }
    if (pluginJars != null) {
      options.put(Setting.PLUGINS, pluginJars);
    }
    return options;
  }
}
