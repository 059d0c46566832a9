package tamis.plugin.intake;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;
import static tamis.plugin.intake.Sent.formula;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.record.Limits;
import tamis.engine.record.PlainValues;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.plugin.intake.source.JsonText;

/** Every formula of the demo shop goes out and comes back, and not one line or word is lost. */
class RoundTripTest {
  private static final Path DEMO = Path.of("../../demo-data");
  private static final Pantry KITCHEN =
      new Pantry(
          Shelf.of(all("formulas", Formula.class), all("ingredients", Ingredient.class)),
          Pantry.Fittings.of(List.of(new IntakePlugin())));

  private static <T extends Record> List<T> all(String folder, Class<T> type) {
    var reader = new RecordReader(References.UNCHECKED, Limits.usual());
    try (var files = Files.list(DEMO.resolve(folder))) {
      return files.sorted().map(f -> reader.read(type, JsonText.parse(text(f)))).toList();
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException missing) {
      throw new UncheckedIOException(missing);
    }
  }

  private static Intake.Result read(String form, Object source, Object... more) {
    return Sent.answer(KITCHEN, form, source, more).result();
  }

  /** Those of the demo shop, and those that its collections give. */
  static Stream<Formula> formulas() throws IOException {
    Map<String, String> forms =
        Map.of("txt", "text", "csv", "csv", "json", "jsonld", "html", "html");
    Stream.Builder<Formula> collected = Stream.builder();
    try (var files = Files.list(DEMO.resolve("collections"))) {
      for (Path file : files.sorted().toList()) {
        String name = file.toString();
        String form = Objects.requireNonNull(forms.get(name.substring(name.lastIndexOf('.') + 1)));
        int count = read(form, text(file)).recipes();
        for (int recipe = 1; recipe <= count; recipe++) {
          collected.add(formula(read(form, text(file), "recipe", recipe)));
        }
      }
    }
    return Stream.concat(all("formulas", Formula.class).stream(), collected.build());
  }

  @ParameterizedTest
  @MethodSource("formulas")
  void a_document_comes_back_equal_as_itself_and_through_json_ld(Formula document) {
    Intake.Result read = read("jsonld", PlainValues.of(document));
    assertThat(read.formula()).isEqualTo(document);
    assertThat(read.lines()).hasSameSizeAs(document.lines());
    Intake.Result back = read("jsonld", RecipeJson.of(read));
    assertThat(back.formula()).isEqualTo(document);
    assertThat(back.unresolved()).isEmpty();
  }

  @Test
  void documents_of_a_file_with_one_on_each_line_come_back_equal() throws IOException {
    List<Formula> documents = formulas().toList();
    StringBuilder lines = new StringBuilder();
    for (Formula document : documents) {
      lines.append(JsonText.write(PlainValues.of(document)).replace("\n", " ")).append('\n');
    }
    for (int i = 0; i < documents.size(); i++) {
      Intake.Result back = read("jsonld", lines.toString(), "recipe", i + 1);
      assertThat(back.recipes()).isEqualTo(documents.size());
      assertThat(back.formula()).isEqualTo(documents.get(i));
    }
  }

  @Test
  void rows_of_a_table_with_its_formula_beside_it_count_as_they_stand() {
    String table =
        "ingredient,quantity,remains,note,document\n"
            + "milk-whole,300 ml,0.5,\"'- warm\",\"{\"\"title\"\":\"\"Tart\"\",\"\"yield\"\":{\"\"portions\"\":8},"
            + "\"\"lines\"\":[{\"\"ingredient\"\":\"\"milk-whole\"\",\"\"quantity\"\":\"\"1 l\"\"}]}\"\n"
            + "salt,as needed,,,\n";
    Formula read = formula(read("csv", table));
    assertThat(read.title()).isEqualTo("Tart");
    assertThat(Objects.requireNonNull(read.yield()).portions()).isEqualTo(8);
    assertThat(read.lines())
        .extracting(line -> line.quantity().text())
        .containsExactly("300 ml", "as needed");
    assertThat(read.lines().get(0).note()).isEqualTo("- warm");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "{\"lines\":[{\"ingredient\":\"moon-dust\",\"quantity\":\"1 g\"}]}",
        "{\"lines\":[{\"ingredient\":\"salt\",\"quantity\":\"much\"}]}",
        "{\"lines\":[]}"
      })
  void a_document_that_cannot_be_made_is_refused_where_it_is_wrong(String document) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> read("jsonld", document));
    assertThat(refusal).isNotNull();
    assertThat(refusal.faults().get(0).pointer()).startsWith("/jsonld/lines");
  }
}
