package tamis.api.plugin;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import tamis.api.version.Versions;
import tamis.engine.spi.Calculation;

class PluginLoaderTest {
  private static final Duration LIMIT = Duration.ofSeconds(5);

  @TempDir private Path directory;

  private Plugins load() {
    return PluginLoader.load(getClass().getClassLoader(), directory, Versions.ofThisBuild(), LIMIT);
  }

  private void isRefused(String jar, String why) {
    try (var plugins = load()) {
      assertThat(plugins.refused())
          .singleElement()
          .satisfies(
              refused -> {
                assertThat(refused.jar()).isEqualTo(jar);
                assertThat(refused.why()).contains(why).doesNotContain("tamis.", "dropped", "/");
              });
      assertThat(plugins.calculation("weighing")).isNull();
      assertThat(plugins.calculation("conversion")).isNotNull();
    }
  }

  @Test
  void ours_are_found_without_a_directory() {
    var plugins =
        PluginLoader.load(getClass().getClassLoader(), null, Versions.ofThisBuild(), LIMIT);
    assertThat(plugins.names()).contains("conversion", "scaling");
    assertThat(plugins.loaded()).allMatch(one -> one.origin().equals("built in"));
    assertThat(plugins.tables()).containsKeys("densities", "pans");
    plugins.close();
  }

  @Test
  void a_dropped_in_jar_is_loaded_beside_ours() throws IOException {
    PluginJar.of("dropped", "weighing").in(directory, "weighing.jar");
    Files.writeString(directory.resolve("readme.txt"), "no jar, not meant");
    try (var plugins = load()) {
      assertThat(plugins.refused()).isEmpty();
      assertThat(plugins.calculation("weighing"))
          .isNotNull()
          .extracting(Calculation::title)
          .isEqualTo("Weighs what was dropped in");
      assertThat(plugins.loaded())
          .filteredOn(one -> one.name().equals("dropped"))
          .singleElement()
          .extracting(LoadedPlugin::origin)
          .isEqualTo("weighing.jar");
    }
  }

  @Test
  void the_copy_is_used_so_the_jar_may_be_overwritten() throws IOException {
    var jar = PluginJar.of("dropped", "weighing").in(directory, "weighing.jar");
    try (var plugins = load()) {
      Files.writeString(jar, "overwritten while it is in use");
      assertThat(plugins.calculation("weighing").examples()).hasSize(1);
      var inner =
          plugins.guard("weighing").run("weighing", () -> plugins.calculation("weighing").input());
      assertThat(inner.getSimpleName()).isEqualTo("Weighed");
    }
  }

  @Test
  void junk_is_refused_by_name() throws IOException {
    Files.writeString(directory.resolve("junk.jar"), "this is no jar");
    isRefused("junk.jar", "is no jar");
  }

  @Test
  void an_empty_file_is_refused_by_name() throws IOException {
    Files.createFile(directory.resolve("empty.jar"));
    isRefused("empty.jar", "is no jar");
  }

  @Test
  void a_jar_without_a_plugin_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").providing(null).in(directory, "none.jar");
    isRefused("none.jar", "holds no plugin");
  }

  @Test
  void a_jar_that_names_a_class_it_does_not_hold_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").providing("dropped.Nowhere").in(directory, "broken.jar");
    isRefused("broken.jar", "cannot be loaded");
  }

  @Test
  void a_jar_that_lacks_a_class_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").withoutItsRecord().in(directory, "broken.jar");
    isRefused("broken.jar", "cannot be loaded");
  }

  @Test
  void a_jar_for_a_later_contract_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").builtAgainst("2").in(directory, "new.jar");
    isRefused("new.jar", "was built against contract 2 and this program has 1");
  }

  @Test
  void a_jar_that_does_not_tell_its_contract_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").builtAgainst(null).in(directory, "untold.jar");
    isRefused("untold.jar", "Tamis-Spi-Version: 1");
  }

  @Test
  void a_plugin_that_throws_at_its_start_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing")
        .starting("if (true) throw new IllegalStateException(\"no\");")
        .in(directory, "throwing.jar");
    isRefused("throwing.jar", "start failed");
  }

  @Test
  void a_plugin_that_never_ends_its_start_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing").starting(PluginJar.ENDLESS).in(directory, "endless.jar");
    long from = System.nanoTime();
    isRefused("endless.jar", "did not end");
    assertThat(Duration.ofNanos(System.nanoTime() - from)).isLessThan(LIMIT.multipliedBy(3));
  }

  @Test
  void a_record_that_is_not_described_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing")
        .changing(
            "@Described(value = \"Mass\", unit = \"g\", example = \"5\", headline = true)", "")
        .in(directory, "plain.jar");
    isRefused("plain.jar", "`weighing` is not described");
  }

  @Test
  void an_input_that_is_named_as_an_option_is_refused_by_name() throws IOException {
    PluginJar.of("dropped", "weighing")
        .changing("double grams", "double format")
        .in(directory, "format.jar");
    isRefused("format.jar", "`weighing` is not described");
  }

  @Test
  void a_name_that_is_no_name_is_refused() throws IOException {
    PluginJar.of("dropped", "Weighing Things").in(directory, "name.jar");
    isRefused("name.jar", "lower-case words with hyphens");
  }

  @Test
  void a_plugin_of_the_same_name_is_refused_and_the_first_stays() throws IOException {
    PluginJar.of("dropped", "weighing").in(directory, "a.jar");
    PluginJar.of("dropped", "weighing-again").in(directory, "b.jar");
    try (var plugins = load()) {
      assertThat(plugins.calculation("weighing")).isNotNull();
      assertThat(plugins.refused()).singleElement().extracting(RefusedJar::jar).isEqualTo("b.jar");
    }
  }

  @Test
  void a_table_is_brought_along() throws IOException {
    PluginJar.of("dropped", "weighing").bringing("crumbs").in(directory, "crumbs.jar");
    try (var plugins = load()) {
      assertThat(plugins.refused()).isEmpty();
      assertThat(plugins.tables().get("crumbs").row("fine").number("grams")).isEqualTo(1);
    }
  }

  @Test
  void a_table_that_another_brings_is_refused() throws IOException {
    PluginJar.of("dropped", "weighing").bringing("pans").in(directory, "pans.jar");
    isRefused("pans.jar", "its table `pans` is brought by another already");
  }

  @Test
  void two_calculations_of_one_name_stop_the_start() throws IOException {
    PluginJar.of("one", "weighing").in(directory, "a.jar");
    PluginJar.of("two", "weighing").in(directory, "b.jar");
    assertThatThrownBy(this::load)
        .isInstanceOf(ClashingPlugins.class)
        .hasMessageContaining("`weighing`")
        .hasMessageContaining("a.jar")
        .hasMessageContaining("b.jar");
  }

  @Test
  void a_calculation_named_as_one_of_ours_stops_the_start() throws IOException {
    PluginJar.of("one", "conversion").in(directory, "a.jar");
    assertThatThrownBy(this::load)
        .isInstanceOf(ClashingPlugins.class)
        .hasMessageContaining("built in")
        .hasMessageContaining("a.jar");
  }

  @Test
  void a_plugin_sees_the_engine_and_nothing_else_of_ours() throws IOException {
    for (var hidden :
        new String[] {
          "com.fasterxml.jackson.core.JsonFactory",
          "io.javalin.Javalin",
          "tamis.api.Main",
          "tamis.plugin.conversion.Conversion",
          "org.slf4j.Logger"
        }) {
      PluginJar.of("dropped", "weighing")
          .starting(
              "try { Class.forName(\""
                  + hidden
                  + "\"); } catch (ClassNotFoundException e) { return; }"
                  + " throw new IllegalStateException();")
          .in(directory, "peeking.jar");
      try (var plugins = load()) {
        assertThat(plugins.refused()).as(hidden).isEmpty();
      }
    }
    PluginJar.of("dropped", "weighing")
        .starting(
            "if (Thread.currentThread().getContextClassLoader() != Dropped.class.getClassLoader())"
                + " throw new IllegalStateException();")
        .in(directory, "peeking.jar");
    try (var plugins = load()) {
      assertThat(plugins.refused()).isEmpty();
    }
  }

  @Test
  void the_copies_are_gone_when_it_is_closed() throws IOException {
    PluginJar.of("dropped", "weighing").in(directory, "weighing.jar");
    var before = copies();
    load().close();
    assertThat(copies()).isEqualTo(before);
  }

  private static long copies() throws IOException {
    try (var files = Files.list(Path.of(System.getProperty("java.io.tmpdir")))) {
      return files
          .filter(file -> file.getFileName().toString().startsWith("tamis-plugins"))
          .count();
    }
  }
}
