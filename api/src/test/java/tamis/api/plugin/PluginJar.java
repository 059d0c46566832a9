package tamis.api.plugin;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.StringWriter;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.jar.Attributes;
import java.util.jar.JarEntry;
import java.util.jar.JarOutputStream;
import java.util.jar.Manifest;
import javax.tools.SimpleJavaFileObject;
import javax.tools.ToolProvider;

/** Compiles the source of a plugin and packs it as its author would. */
public final class PluginJar {
  /** Code that nothing ends. It sleeps, so that the tests that follow keep their cores. */
  public static final String ENDLESS =
      "while (true) try { Thread.sleep(1_000); } catch (InterruptedException goesOn) { }";

  private static final String SOURCE =
      """
      package dropped;

      import java.util.List;
      import tamis.engine.record.Described;
      import tamis.engine.spi.*;

      public final class Dropped implements Plugin {
        public Dropped() {
          START
        }

        @Override
        public String name() {
          return "PLUGIN";
        }

        @Override
        public List<Calculation<?, ?>> calculations() {
          return List.of(new Weighing());
        }

        public record Weighed(
            @Described(value = "Mass", unit = "g", example = "5", headline = true) double grams) {}

        static final class Weighing implements Calculation<Weighed, Weighed> {
          @Override
          public String name() {
            return "CALCULATION";
          }

          @Override
          public String title() {
            return "Weighs what was dropped in";
          }

          @Override
          public Class<Weighed> input() {
            return Weighed.class;
          }

          @Override
          public Class<Weighed> result() {
            return Weighed.class;
          }

          @Override
          public List<Weighed> examples() {
            return List.of(new Weighed(5));
          }

          @Override
          public Answer<Weighed> calculate(Weighed input, Kitchen kitchen) {
            WORK
          }
        }
      }
      """;

  private String source;
  private String spi = "1";
  private String provider = "dropped.Dropped";
  private boolean withoutClass;
  private final Map<String, String> tables = new LinkedHashMap<>();

  private PluginJar(String plugin, String calculation) {
    source = SOURCE.replace("PLUGIN", plugin).replace("CALCULATION", calculation);
  }

  /** A plugin whose one calculation answers {@code {"grams": n}} to {@code {"grams": n}}. */
  public static PluginJar of(String plugin, String calculation) {
    return new PluginJar(plugin, calculation);
  }

  /** What its constructor does. */
  public PluginJar starting(String code) {
    source = source.replace("START", code);
    return this;
  }

  /** What its calculation does; sees {@code input} and {@code kitchen}. */
  public PluginJar working(String code) {
    source = source.replace("WORK", code);
    return this;
  }

  /** Some other change of its source. */
  public PluginJar changing(String from, String to) {
    assertThat(source).contains(from);
    source = source.replace(from, to);
    return this;
  }

  /** The contract that its manifest says; none if null. */
  public PluginJar builtAgainst(String version) {
    spi = version;
    return this;
  }

  /** The class that its services file names; no such file if null. */
  public PluginJar providing(String name) {
    provider = name;
    return this;
  }

  /** A table that it brings, with one row. */
  public PluginJar bringing(String table) {
    tables.put(
        "dropped/" + table + ".csv",
        "crumb,grams,source,locator,basis,as_of\nfine,1,common-practice,sieved,common practice,2026\n");
    return changing(
        "public record Weighed(",
        """
        @Override
        public List<tamis.engine.table.Table> tables() {
          return List.of(
              tamis.engine.table.TableReader.read(
                  Dropped.class, "TABLE.csv", "Crumbs", List.of("crumb")));
        }

        public record Weighed("""
            .replace("TABLE", table));
  }

  /** Leaves the class of its result out, as a careless build does. */
  public PluginJar withoutItsRecord() {
    withoutClass = true;
    return this;
  }

  public Path in(Path directory, String file) throws IOException {
    var classes = Files.createTempDirectory(directory, "classes");
    compile(classes);
    var manifest = new Manifest();
    manifest.getMainAttributes().put(Attributes.Name.MANIFEST_VERSION, "1.0");
    if (spi != null) {
      manifest.getMainAttributes().putValue("Tamis-Spi-Version", spi);
    }
    var jar = directory.resolve(file);
    try (var out = new JarOutputStream(Files.newOutputStream(jar), manifest);
        var files = Files.walk(classes)) {
      for (var one : files.filter(Files::isRegularFile).toList()) {
        if (!withoutClass || !one.toString().endsWith("$Weighed.class")) {
          add(out, classes.relativize(one).toString(), Files.readAllBytes(one));
        }
      }
      for (var table : tables.entrySet()) {
        add(out, table.getKey(), table.getValue().getBytes(StandardCharsets.UTF_8));
      }
      if (provider != null) {
        add(
            out,
            "META-INF/services/tamis.engine.spi.Plugin",
            provider.getBytes(StandardCharsets.UTF_8));
      }
    }
    return jar;
  }

  private void compile(Path classes) {
    var code = source.replace("START", "").replace("WORK", "return Answer.of(input);");
    var file =
        new SimpleJavaFileObject(
            URI.create("string:///dropped/Dropped.java"), SimpleJavaFileObject.Kind.SOURCE) {
          @Override
          public CharSequence getCharContent(boolean ignoreEncodingErrors) {
            return code;
          }
        };
    var said = new StringWriter();
    boolean compiled =
        ToolProvider.getSystemJavaCompiler()
            .getTask(
                said,
                null,
                null,
                List.of(
                    "-d",
                    classes.toString(),
                    "-classpath",
                    System.getProperty("java.class.path"),
                    "-proc:none"),
                null,
                List.of(file))
            .call();
    assertThat(compiled).as(said.toString()).isTrue();
  }

  private static void add(JarOutputStream out, String name, byte[] bytes) throws IOException {
    out.putNextEntry(new JarEntry(name));
    out.write(bytes);
    out.closeEntry();
  }
}
