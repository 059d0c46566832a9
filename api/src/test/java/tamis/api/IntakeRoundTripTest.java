package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.ServiceLoader;
import java.util.TreeMap;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.formula.Formula;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Limits;
import tamis.engine.record.PlainValues;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Plugin;

/** The formulas and the collections of the demo shop, out in every form and back. */
class IntakeRoundTripTest {
  private static final Path DEMO = Path.of("../demo-data");
  private static final Pantry KITCHEN =
      new Pantry(
          Shelf.of(documents(), all(DEMO.resolve("ingredients"), Ingredient.class)),
          Pantry.Fittings.of(
              ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::get).toList()));

  @TempDir private Path folder;

  static List<Formula> documents() {
    return all(DEMO.resolve("formulas"), Formula.class);
  }

  /** Those that have a size of their own, and not only percentages. */
  static List<Formula> weighed() {
    return documents().stream()
        .filter(
            f ->
                f.lines().stream()
                    .anyMatch(l -> l.quantity().isMeasured() && !l.quantity().text().endsWith("%")))
        .toList();
  }

  private static <T extends Record> List<T> all(Path folder, Class<T> type) {
    var reader = new RecordReader(References.UNCHECKED, Limits.usual());
    try (var files = Files.list(folder)) {
      return files
          .filter(file -> !String.valueOf(file.getFileName()).startsWith("."))
          .sorted()
          .map(file -> reader.read(type, StrictJson.tree(bytes(file), JsonLimits.usual())))
          .toList();
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private static byte[] bytes(Path file) {
    try {
      return Files.readAllBytes(file);
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private static Formula read(Object document, Object... more) {
    var input = new LinkedHashMap<String, Object>(Map.of("jsonld", document));
    for (int i = 0; i < more.length; i += 2) {
      input.put((String) more[i], more[i + 1]);
    }
    var result = PlainValues.of(KITCHEN.calculate("intake", input).result());
    return new RecordReader(KITCHEN, Limits.usual())
        .read(Formula.class, Objects.requireNonNull(result.get("formula")));
  }

  private String run(Path from, Path to, String form) {
    var err = new StringWriter();
    Main.commandLine(Map.of())
        .setErr(new PrintWriter(err))
        .execute("intake", "--demo", from.toString(), "--out", to.toString(), "--form", form);
    return err.toString();
  }

  private static Map<String, Formula> byId(Path folder) {
    var formulas = new TreeMap<String, Formula>();
    all(folder, Formula.class).forEach(f -> formulas.put(String.valueOf(f.id()), f));
    return formulas;
  }

  @ParameterizedTest
  @ValueSource(strings = {"json", "ndjson", "jsonld", "csv"})
  void what_the_command_wrote_it_reads_back_equal(String form) {
    for (String kind : List.of("collections", "formulas")) {
      var first = folder.resolve(kind + "-first");
      run(DEMO.resolve(kind), first, "json");
      assertThat(byId(first)).hasSizeGreaterThan(9);
      var written = folder.resolve(kind + "-written");
      run(first, written, form);
      var back = folder.resolve(kind + "-back");
      assertThat(run(written, back, "json")).contains(", 0 to look at").hasLineCount(1);
      assertThat(byId(back).values())
          .as(kind)
          .containsExactlyInAnyOrderElementsOf(byId(first).values());
    }
  }

  /** The folder of the sources may be that of the formulas: nothing of it is read twice or lost. */
  @Test
  void the_folder_that_is_read_may_be_written_into() throws IOException {
    Files.writeString(folder.resolve("a.txt"), "Tart\n1 cup honey\n");
    String mine = "{\"@type\":\"Recipe\",\"name\":\"Tart\",\"recipeIngredient\":[\"1 cup milk\"]}";
    Files.writeString(folder.resolve("tart.json"), mine);
    for (int i = 0; i < 2; i++) {
      assertThat(run(folder, folder, "json")).contains("2 recipes read, 2 files").hasLineCount(1);
      assertThat(folder.resolve("tart.json")).hasContent(mine);
      assertThat(folder.resolve("tart-2.json")).exists();
      assertThat(folder.resolve("tart-3.json")).exists();
      assertThat(folder.resolve("tart-4.json")).doesNotExist();
    }
  }

  /** Only the quantities may differ, and a batch weighs what it weighed. */
  @ParameterizedTest
  @MethodSource("weighed")
  void in_other_quantities_everything_else_stays(Formula document) {
    for (String kind : List.of("grams", "us", "metric")) {
      Formula made = read(PlainValues.of(document), "quantities", kind);
      assertThat(bare(made)).as(kind).isEqualTo(bare(document));
      assertThat(mass(made)).as(kind).isEqualTo(mass(document), within(mass(document) * 0.002));
    }
    Formula us = read(PlainValues.of(document), "quantities", "us");
    Formula metric = read(PlainValues.of(us), "quantities", "metric");
    Formula again = read(PlainValues.of(metric), "quantities", "us");
    assertThat(bare(again)).isEqualTo(bare(document));
    assertThat(mass(again)).isEqualTo(mass(document), within(mass(document) * 0.005));
    Formula twice = read(PlainValues.of(document), "to", Map.of("factor", 2));
    Formula once = read(PlainValues.of(twice), "to", Map.of("factor", 0.5));
    assertThat(bare(once)).isEqualTo(bare(document));
    assertThat(mass(once)).isEqualTo(mass(document), within(mass(document) * 0.001));
  }

  /** The formula without its quantities, of which only whether there is one is kept. */
  private static List<Object> bare(Formula formula) {
    List<Line> lines =
        formula.lines().stream()
            .map(
                line ->
                    new Line(
                        line.ingredient(),
                        line.formula(),
                        Quantity.parse(line.quantity().isAsNeeded() ? "as needed" : "1 g"),
                        line.state(),
                        line.preparation(),
                        line.stage(),
                        line.role(),
                        line.remains(),
                        line.note()))
            .toList();
    return Arrays.asList(
        formula.id(),
        formula.title(),
        lines,
        formula.stages(),
        formula.shelfLife(),
        formula.packaging(),
        formula.flour(),
        formula.notes(),
        formula.origin());
  }

  private static double mass(Formula formula) {
    return KITCHEN.batch(FormulaRef.of(formula), null).root().mass().typical();
  }

  @Test
  void in_percent_of_the_flour_every_line_stays() {
    Formula dough =
        documents().stream()
            .filter(formula -> "shortbread".equals(formula.id()))
            .findFirst()
            .orElseThrow();
    Formula percent = read(PlainValues.of(dough), "quantities", "percent");
    assertThat(bare(percent)).isEqualTo(bare(dough));
    assertThat(read(PlainValues.of(percent))).isEqualTo(percent);
  }
}
