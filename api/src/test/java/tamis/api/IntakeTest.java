package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.RandomAccessFile;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.formula.Formula;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** A collection of recipes at the command line, run again and again. */
class IntakeTest {
  private final StringWriter err = new StringWriter();

  @TempDir private Path folder;

  private Path recipes;
  private Path out;
  private Path side;

  @BeforeEach
  void folders() throws IOException {
    recipes = Files.createDirectory(folder.resolve("recipes"));
    out = folder.resolve("formulas");
    side = folder.resolve("formulas.unresolved.csv");
  }

  private int run(String... more) {
    err.getBuffer().setLength(0);
    var arguments = new ArrayList<>(List.of("intake", recipes.toString(), "--out", out.toString()));
    arguments.addAll(List.of(more));
    return Main.commandLine(Map.of())
        .setErr(new PrintWriter(err))
        .execute(arguments.toArray(String[]::new));
  }

  private void recipe(String name, String text) throws IOException {
    var file = recipes.resolve(name);
    Files.createDirectories(file.getParent());
    Files.writeString(file, text);
  }

  private List<String> written() throws IOException {
    try (var files = Files.list(out)) {
      return files
          .map(file -> String.valueOf(file.getFileName()))
          .filter(name -> !name.startsWith("."))
          .sorted()
          .toList();
    }
  }

  private Formula formula(String name) throws IOException {
    var tree = StrictJson.tree(Files.readAllBytes(out.resolve(name)), JsonLimits.usual());
    return new RecordReader(References.UNCHECKED, Limits.usual()).read(Formula.class, tree);
  }

  @Test
  void a_folder_becomes_formulas_one_a_recipe() throws IOException {
    recipe("buns.txt", "Buns\n2 cups bread flour\n1 tsp salt\n----\nTarts\n1 cup milk\n2 eggs\n");
    recipe("old/loaf.json", "{\"@type\":\"Recipe\",\"recipeIngredient\":[\"1 cup honey\"]}");
    recipe("old/table.csv", "recipe,line\nIcing,1 cup powdered sugar\nGlaze,1 cup water\n");
    recipe("picture.png", "no text");
    assertThat(run()).isZero();
    assertThat(written())
        .containsExactly("buns.json", "glaze.json", "icing.json", "loaf.json", "tarts.json");
    assertThat(formula("loaf.json").origin()).isEqualTo("old/loaf.json");
    assertThat(formula("buns.json").id()).isEqualTo("buns");
    assertThat(side).doesNotExist();
    assertThat(err.toString())
        .contains("5 recipes read, 5 files written, 7 lines understood, 0 to");
  }

  @Test
  void a_second_run_writes_the_same_and_nothing_twice() throws IOException {
    recipe("a.txt", "Buns\n2 cups bread flour\n");
    recipe("b.txt", "Buns\n3 cups bread flour\n");
    assertThat(run()).isZero();
    byte[] first = Files.readAllBytes(out.resolve("buns-2.json"));
    assertThat(run()).isZero();
    assertThat(written()).containsExactly("buns-2.json", "buns.json");
    assertThat(Files.readAllBytes(out.resolve("buns-2.json"))).isEqualTo(first);
  }

  @Test
  void a_formula_that_somebody_changed_is_left_as_it_is() throws IOException {
    recipe("a.txt", "Buns\n2 cups bread flour\n");
    assertThat(run()).isZero();
    Files.writeString(out.resolve("buns.json"), "{\"mine\":1}");
    recipe("a.txt", "Buns\n3 cups bread flour\n");
    assertThat(run()).isEqualTo(1);
    assertThat(err.toString()).contains("buns.json was changed since it was written");
    assertThat(Files.readString(out.resolve("buns.json"))).isEqualTo("{\"mine\":1}");
    recipe("a.txt", "Rolls\n3 cups bread flour\n");
    assertThat(run()).isZero();
  }

  @Test
  void what_is_written_in_the_side_file_is_read_at_the_next_run_and_stays() throws IOException {
    recipe("a.txt", "Buns\n- 2 cups bread flour\n- a lump of butter the size of an egg\n");
    assertThat(run()).isEqualTo(1);
    String table = Files.readString(side);
    assertThat(table).contains("a.txt,1,3,'- a lump of butter the size of an egg");
    assertThat(formula("buns.json").lines()).hasSize(1);
    String filled = table.replaceAll(",\r\n(?=$)", ",50 g butter\r\n");
    assertThat(filled).isNotEqualTo(table);
    Files.writeString(side, filled);
    assertThat(run()).as(err.toString()).isZero();
    assertThat(formula("buns.json").lines()).hasSize(2);
    assertThat(run()).as("the correction stays").isZero();
    assertThat(formula("buns.json").lines()).hasSize(2);
  }

  @Test
  void what_was_written_for_a_file_stays_when_another_is_read() throws IOException {
    recipe("a.txt", "Buns\n- 2 cups bread flour\n- a lump of butter the size of an egg\n");
    assertThat(run()).isEqualTo(1);
    Files.writeString(side, Files.readString(side).replaceAll(",\r\n(?=$)", ",50 g butter\r\n"));
    Files.delete(recipes.resolve("a.txt"));
    recipe("b.txt", "Rolls\n- 2 cups bread flour\n");
    assertThat(run()).isZero();
    assertThat(Files.readString(side)).contains("50 g butter");
  }

  @Test
  void a_side_file_that_is_no_such_table_is_told_and_left() throws IOException {
    recipe("a.txt", "Buns\n2 cups bread flour\n");
    Files.writeString(side, "my,notes\n1,2\n");
    assertThat(run()).isEqualTo(2);
    assertThat(err.toString()).contains(side.toString()).hasLineCount(1);
    assertThat(Files.readString(side)).isEqualTo("my,notes\n1,2\n");
  }

  @ParameterizedTest(name = "--form {0}")
  @CsvSource({
    "json, buns.json, bread-flour",
    "ndjson, formulas.ndjson, bread-flour",
    "jsonld, buns.jsonld, recipeIngredient",
    "csv, buns.csv, 'bread-flour,,2 cup'",
  })
  void formulas_are_written_in_the_form_that_is_asked_for(String form, String file, String holds)
      throws IOException {
    recipe("a.txt", "Buns\n2 cups bread flour\n");
    assertThat(run("--form", form)).isZero();
    assertThat(Files.readString(out.resolve(file))).contains(holds);
  }

  @Test
  void a_collection_comes_back_equal_from_json_ld() throws IOException {
    recipe("a.txt", "Buns\nServes 4\n2 cups sifted flour\nsalt to taste\nBake 20 min at 400 F.\n");
    assertThat(run()).isZero();
    Formula before = formula("buns.json");
    assertThat(run("--form", "jsonld")).isZero();
    Files.move(out.resolve("buns.jsonld"), recipes.resolve("a.jsonld"));
    Files.delete(recipes.resolve("a.txt"));
    Files.delete(out.resolve("buns.json"));
    assertThat(run()).isZero();
    Formula after = formula("buns.json");
    assertThat(after.lines()).isEqualTo(before.lines());
    assertThat(after.stages()).isEqualTo(before.stages());
    assertThat(after.yield()).isEqualTo(before.yield());
    assertThat(after.title()).isEqualTo(before.title());
  }

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource(
      delimiter = '|',
      value = {
        "grams|250 g|50 g",
        "metric|473.18 ml|1 each",
        "percent|100 %|20 %",
      })
  void quantities_are_written_as_asked(String kind, String flour, String egg) throws IOException {
    recipe("a.txt", "Buns\n2 cups all-purpose flour\n1 egg\n");
    assertThat(run("--quantities", kind)).isZero();
    var lines = formula("buns.json").lines();
    assertThat(lines.get(0).quantity().text()).isEqualTo(flour);
    assertThat(lines.get(1).quantity().text()).isEqualTo(egg);
  }

  @Test
  void a_recipe_is_made_larger() throws IOException {
    recipe("a.txt", "Buns\nServes 4\n1/3 cup honey\n1-2 eggs\n");
    assertThat(run("--factor", "2")).isZero();
    Formula formula = formula("buns.json");
    assertThat(formula.lines().get(0).quantity().text()).isEqualTo("2/3 cup");
    assertThat(formula.lines().get(1).quantity().high()).isEqualTo(4);
    assertThat(java.util.Objects.requireNonNull(formula.yield()).portions()).isEqualTo(8);
  }

  @Test
  void a_file_that_cannot_be_read_is_told_and_the_rest_is_done() throws IOException {
    Files.write(
        recipes.resolve("latin.txt"), "Crème\n1 cup milk".getBytes(StandardCharsets.ISO_8859_1));
    Files.write(
        recipes.resolve("wide.txt"), "\uFEFFWide\n1 cup milk".getBytes(StandardCharsets.UTF_16LE));
    Files.write(recipes.resolve("zero.txt"), new byte[100]);
    recipe("marked.txt", "\uFEFFMarked\n1 cup milk\n");
    recipe("broken.json", "{\"@type\":");
    recipe("empty.txt", "");
    recipe("novel.txt", "It was a dark night, and two men walked along the road. ".repeat(40));
    recipe("huge.txt", "1 cup milk\n".repeat(100_000));
    try (var line = new RandomAccessFile(recipes.resolve("gigabyte.txt").toFile(), "rw")) {
      line.setLength(1L << 30); // one line
    }
    assertThat(run()).isEqualTo(1);
    assertThat(written()).containsExactly("marked.json", "wide.json");
    assertThat(err.toString())
        .contains("latin.txt is not UTF-8 from byte 3 on")
        .contains("zero.txt is no text")
        .contains("broken.json: the text is no JSON")
        .contains("empty.txt holds no line")
        .contains("novel.txt holds no line")
        .contains("huge.txt has 1100000 bytes")
        .contains("gigabyte.txt has 1073741824 bytes");
    Files.delete(recipes.resolve("gigabyte.txt"));
    Files.delete(recipes.resolve("zero.txt"));
    assertThat(run("--charset", "ISO-8859-1")).isEqualTo(1);
    assertThat(written()).contains("creme.json");
  }

  @Test
  void a_broken_line_of_many_documents_is_told_and_the_others_are_read() throws IOException {
    recipe(
        "all.ndjson",
        """
        {"@type":"Recipe","name":"Buns","recipeIngredient":["500 g bread flour"]}
        {"@type":"Recipe","name":"Rolls","recipeIngredient":[
        {"@type":"Recipe","name":"Loaf","recipeIngredient":["300 g rye flour"]}
        """);
    assertThat(run()).isEqualTo(1);
    assertThat(written()).containsExactly("buns.json", "loaf.json");
    assertThat(err.toString()).contains("all.ndjson: line 2 is left out: it cannot be read");
  }

  @Test
  void files_of_one_name_in_two_folders_do_not_share_what_was_written_for_them()
      throws IOException {
    var other = Files.createDirectory(folder.resolve("other"));
    recipe("a.txt", "Buns\n1 cup honey\na lump of butter\n");
    Files.writeString(other.resolve("a.txt"), "Rolls\n1 cup honey\na lump of butter\n");
    assertThat(run(other.toString(), recipes.resolve("a.txt").toString())).isEqualTo(1);
    assertThat(written()).as("a file that is named twice is read once").hasSize(2);
    var lines = new ArrayList<>(Files.readAllLines(side));
    assertThat(lines).hasSize(3);
    lines.set(1, lines.get(1) + "50 g butter");
    Files.writeString(side, String.join("\r\n", lines) + "\r\n");
    assertThat(run(other.toString())).isEqualTo(1);
    assertThat(formula("buns.json").lines()).hasSize(2);
    assertThat(formula("rolls.json").lines()).hasSize(1);
  }

  @Test
  void a_recipe_keeps_its_file_when_others_come_and_go() throws IOException {
    recipe("b.txt", "Buns\n2 cups honey\n");
    recipe("c.txt", "Buns\n3 cups honey\n");
    assertThat(run()).isZero();
    byte[] second = Files.readAllBytes(out.resolve("buns-2.json"));
    recipe("a.txt", "Buns\n1 cup honey\n");
    assertThat(run()).isZero();
    assertThat(written()).containsExactly("buns-2.json", "buns-3.json", "buns.json");
    assertThat(Files.readAllBytes(out.resolve("buns-2.json"))).isEqualTo(second);
    Files.delete(recipes.resolve("b.txt"));
    assertThat(run()).isZero();
    assertThat(written()).containsExactly("buns-2.json", "buns-3.json", "buns.json");
    assertThat(Files.readAllBytes(out.resolve("buns-2.json"))).isEqualTo(second);
  }

  /** As after a kill: a line of the marks is broken off, or its file was not written any more. */
  @ParameterizedTest
  @ValueSource(strings = {"0123", "", "broken \n"})
  void a_run_that_was_broken_off_is_taken_up_and_does_nothing_twice(String rest)
      throws IOException {
    recipe("a.txt", "Buns\n1 cup honey\n");
    recipe("b.txt", "Buns\n2 cups honey\n");
    assertThat(run()).isZero();
    byte[] first = Files.readAllBytes(out.resolve("buns.json"));
    var marks = out.resolve(".intake");
    var half = Files.readAllLines(marks).get(0);
    Files.writeString(marks, half + "\n" + rest);
    Files.delete(out.resolve("buns-2.json"));
    Files.writeString(out.resolve("buns.json.new"), "half of it");
    recipe("a.txt", "Buns\n5 cups honey\n");
    assertThat(run()).as(err.toString()).isZero();
    assertThat(written()).contains("buns-2.json", "buns.json");
    assertThat(Files.readAllBytes(out.resolve("buns.json"))).isNotEqualTo(first);
    assertThat(formula("buns-2.json").origin()).isEqualTo("b.txt");
  }

  @Test
  void a_file_of_lines_that_somebody_changed_is_left_too() throws IOException {
    recipe("a.txt", "Buns\n1 cup honey\n2 eggs\n----\nRolls\n2 cups honey\n3 eggs\n");
    assertThat(run("--form", "ndjson")).isZero();
    assertThat(Files.readAllLines(out.resolve("formulas.ndjson"))).hasSize(2);
    assertThat(run("--form", "ndjson")).isZero();
    assertThat(Files.readAllLines(out.resolve("formulas.ndjson"))).hasSize(2);
    Files.writeString(out.resolve("formulas.ndjson"), "mine");
    assertThat(run("--form", "ndjson")).isEqualTo(1);
    assertThat(out.resolve("formulas.ndjson")).hasContent("mine");
    assertThat(written()).containsExactly("formulas.ndjson");
  }

  @ParameterizedTest
  @ValueSource(
      strings = {
        "--form pdf",
        "--quantities cups",
        "--language xx",
        "--measures imperial",
        "--charset none-such",
        "--factor 0",
        "--factor -1",
        "no-such-folder",
        "--data d --demo",
      })
  void wrong_use_is_one_line_and_exit_2(String wrong) throws IOException {
    recipe("a.txt", "Buns\n2 cups bread flour\n");
    assertThat(run(wrong.split(" "))).isEqualTo(2);
    assertThat(err.toString()).startsWith("tamis: ").hasLineCount(1);
    assertThat(out).doesNotExist();
  }
}
