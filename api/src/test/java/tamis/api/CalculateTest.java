package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.api.store.DataDirectory;
import tamis.api.store.Document;
import tamis.api.store.SqlStore;
import tamis.engine.formula.Formula;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** A file of records at the command line, from beginning to end whatever comes between. */
class CalculateTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  @TempDir private Path folder;

  private Path records;
  private Path answers;
  private Path rejected;

  @BeforeEach
  void files() {
    records = folder.resolve("records.ndjson");
    answers = folder.resolve("answers.ndjson");
    rejected = folder.resolve("answers.ndjson.rejected");
  }

  private int run(String... arguments) {
    return Main.commandLine(Map.of())
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .execute(arguments);
  }

  private int calculate(String name, String... more) {
    var arguments =
        new ArrayList<>(
            List.of("calculate", name, "--in", records.toString(), "--out", answers.toString()));
    arguments.addAll(List.of(more));
    return run(arguments.toArray(String[]::new));
  }

  private static String kilograms(int count) {
    return "{\"quantity\":\"" + count + " kg\",\"unit\":\"g\"}";
  }

  /** Records, each twentieth of which has no meaning. */
  private static String mixed(int count) {
    var text = new StringBuilder();
    for (int i = 1; i <= count; i++) {
      text.append(i % 20 == 0 ? "{\"quantity\":\"" + i + " splash\"}" : kilograms(i)).append('\n');
      if (i % 33 == 0) {
        text.append('\n');
      }
    }
    return text.toString();
  }

  @Test
  void every_record_is_answered_in_its_order_and_nothing_is_said() throws IOException {
    Files.writeString(records, kilograms(3) + "\n\n" + kilograms(1) + "\n" + kilograms(2));
    assertThat(calculate("conversion")).isZero();
    var lines = Files.readAllLines(answers);
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0)).contains("\"amount\":3000");
    assertThat(lines.get(1)).contains("\"amount\":1000");
    assertThat(lines.get(2)).contains("\"amount\":2000");
    assertThat(out.toString() + err).isEmpty();
    try (var left = Files.list(folder)) {
      assertThat(left).containsExactlyInAnyOrder(records, answers);
    }
  }

  @Test
  void rejected_records_stand_in_a_file_of_their_own_with_the_reason() throws IOException {
    Files.writeString(records, kilograms(1) + "\n\n {\"unit\":\"ü\"} \nnonsense\n" + kilograms(2));
    assertThat(calculate("conversion")).isEqualTo(1);
    assertThat(err.toString())
        .isEqualToIgnoringNewLines("tamis: 2 of 4 records were rejected; they are in " + rejected);
    assertThat(Files.readAllLines(answers)).hasSize(4);
    var sideLines = Files.readAllLines(rejected);
    assertThat(sideLines).hasSize(2);
    assertThat(sideLines.get(0))
        .startsWith("{\"line\":3,\"problem\":{")
        .endsWith(",\"record\":\"{\\\"unit\\\":\\\"ü\\\"}\"}");
    assertThat(sideLines.get(1)).startsWith("{\"line\":4,").endsWith(",\"record\":\"nonsense\"}");
  }

  @Test
  void the_file_of_rejected_records_may_be_named() throws IOException {
    Files.writeString(records, "nonsense\n");
    var other = folder.resolve("other");
    assertThat(calculate("conversion", "--rejected", other.toString())).isEqualTo(1);
    assertThat(other).exists();
    assertThat(rejected).doesNotExist();
  }

  @Test
  void documents_are_a_record_each() throws IOException {
    Path documents = Files.createDirectory(folder.resolve("documents"));
    String water = "{\n \"lines\": [\r\n{\"ingredient\":\"water\",\"quantity\":\"%d g\"}]}\n";
    Files.writeString(documents.resolve("a.json"), water.formatted(100));
    Files.writeString(documents.resolve("b.json"), "no formula\nat all");
    Files.writeString(documents.resolve("notes.txt"), "left aside");
    Path other = Files.writeString(folder.resolve("c"), "\uFEFF" + water.formatted(300));
    String[] asked = {
      "calculate",
      "scaling",
      documents.toString(),
      other.toString(),
      "--with",
      "{\"to\":{\"factor\":2}}",
      "--query",
      "pick=/grams&sources=no",
      "--out",
      answers.toString()
    };
    assertThat(run(asked)).as(err.toString()).isEqualTo(1);
    List<String> told = Files.readAllLines(answers);
    assertThat(told).hasSize(3);
    assertThat(told.get(0)).contains("200");
    assertThat(told.get(1)).startsWith("{\"line\":2,\"problem\"");
    assertThat(told.get(2)).contains("600");
    assertThat(Files.readString(rejected)).contains("no formula at all");
  }

  @Test
  void formulas_of_one_folder_take_up_each_other() throws IOException {
    Path documents = Files.createDirectory(folder.resolve("documents"));
    String syrup =
        "{\"id\":\"syrup\",\"lines\":[{\"ingredient\":\"water\",\"quantity\":\"60 g\"}]}";
    String cake = "{\"id\":\"cake\",\"lines\":[{\"formula\":\"syrup\",\"quantity\":\"30 g\"}]}";
    Files.writeString(documents.resolve("cake.json"), cake);
    Files.writeString(documents.resolve("syrup.json"), syrup);
    assertThat(calculated(documents)).as(err.toString()).isZero();
    assertThat(Files.readAllLines(answers)).first().asString().contains(":30");

    Files.writeString(documents.resolve("again.json"), syrup);
    assertThat(calculated(documents)).isEqualTo(2);
    assertThat(err.toString()).contains("formula `syrup` stands twice").doesNotContain("\tat ");
  }

  private int calculated(Path documents) {
    return run(
        "calculate",
        "scaling",
        documents.toString(),
        "--query",
        "pick=/grams&sources=no",
        "--out",
        answers.toString());
  }

  @ParameterizedTest
  @ValueSource(strings = {"[]", "{", "2", ""})
  void what_each_record_says_besides_is_an_object(String with) throws IOException {
    Path document = Files.writeString(folder.resolve("a.json"), "{}");
    String[] asked = {
      "calculate", "scaling", document.toString(), "--with", with, "--out", answers.toString()
    };
    assertThat(run(asked)).isEqualTo(2);
    assertThat(err.toString().lines()).singleElement().asString().contains("--with must be");
  }

  @Test
  void records_or_documents_must_be_named_and_not_both() throws IOException {
    assertThat(run("calculate", "scaling", "--out", answers.toString())).isEqualTo(2);
    Files.writeString(records, kilograms(1));
    assertThat(calculate("scaling", records.toString())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(2).allMatch(line -> line.contains("name either"));
  }

  @Test
  void formulas_come_from_the_demo() throws IOException {
    Files.writeString(records, "{\"formula\":\"brioche\",\"to\":{\"factor\":2}}");
    assertThat(calculate("scaling", "--demo", "--query", "sources=no")).isZero();
    assertThat(Files.readString(answers)).contains("\"factor\":2").doesNotContain("\"sources\"");
  }

  @Test
  void formulas_come_from_the_store_that_is_named() throws IOException {
    var data = Files.createDirectory(folder.resolve("data"));
    var line = Map.of("ingredient", "water", "quantity", "2 kg");
    var formula =
        new RecordReader(References.UNCHECKED, Limits.usual())
            .read(Formula.class, Map.of("id", "wet", "lines", List.of(line)));
    Files.writeString(records, "{\"formula\":\"wet\",\"to\":{\"factor\":2}}");
    try (var open = SqlStore.sqlite(DataDirectory.fileIn(data), Clock.systemUTC())) {
      open.create(Document.of(formula, "wet"), "test");
      assertThat(calculate("scaling", "--data", data.toString(), "--query", "sources=no")).isZero();
    }
    assertThat(Files.readString(answers)).contains("\"grams\":4000").doesNotContain("\"sources\"");
  }

  @ParameterizedTest
  @ValueSource(ints = {1, 2, 3, 7, 50})
  void parts_one_behind_the_other_are_the_whole(int parts) throws IOException {
    Files.writeString(records, mixed(120));
    assertThat(calculate("conversion")).isEqualTo(1);
    var joined = new StringBuilder();
    var joinedRejected = new StringBuilder();
    for (int i = 1; i <= parts; i++) {
      var one = folder.resolve("part-" + i);
      run(
          "calculate",
          "conversion",
          "--in",
          records.toString(),
          "--out",
          one.toString(),
          "--part",
          i + "/" + parts);
      joined.append(Files.readString(one));
      var side = folder.resolve("part-" + i + ".rejected");
      joinedRejected.append(Files.exists(side) ? Files.readString(side) : "");
    }
    assertThat(joined.toString()).isEqualTo(Files.readString(answers));
    assertThat(joinedRejected.toString()).isEqualTo(Files.readString(rejected));
  }

  @Test
  void a_run_that_is_killed_goes_on_without_doing_a_record_twice_or_losing_one() throws Exception {
    Files.writeString(records, mixed(60_000));
    var whole = folder.resolve("whole.ndjson");
    run("calculate", "conversion", "--in", records.toString(), "--out", whole.toString());
    for (int kill = 1; kill <= 3; kill++) {
      long before = Files.exists(answers) ? Files.size(answers) : 0;
      var killed = program();
      while (killed.isAlive() && (!Files.exists(answers) || Files.size(answers) <= before)) {
        Thread.sleep(1);
      }
      killed.destroyForcibly();
      assertThat(killed.waitFor(30, TimeUnit.SECONDS)).isTrue();
      assertThat(killed.exitValue()).as("killed before it ended").isGreaterThan(128);
      assertThat(folder.resolve("answers.ndjson.run")).exists();
    }
    assertThat(Files.size(answers)).isLessThan(Files.size(whole));
    assertThat(calculate("conversion")).isEqualTo(1);
    assertThat(answers).hasSameBinaryContentAs(whole);
    assertThat(rejected).hasSameBinaryContentAs(folder.resolve("whole.ndjson.rejected"));
    assertThat(folder.resolve("answers.ndjson.run")).doesNotExist();
  }

  private Process program() throws IOException {
    return new ProcessBuilder(
            Path.of(System.getProperty("java.home"), "bin", "java").toString(),
            "-XX:TieredStopAtLevel=1",
            "-cp",
            System.getProperty("java.class.path"),
            "tamis.api.Main",
            "calculate",
            "conversion",
            "--in",
            records.toString(),
            "--out",
            answers.toString())
        .redirectErrorStream(true)
        .redirectOutput(folder.resolve("said").toFile())
        .start();
  }

  @Test
  void half_an_answer_at_the_end_is_written_anew() throws IOException {
    Files.writeString(records, mixed(100));
    var whole = folder.resolve("whole.ndjson");
    run("calculate", "conversion", "--in", records.toString(), "--out", whole.toString());
    var all = Files.readAllBytes(whole);
    for (int cut : new int[] {0, 1, 700, all.length / 2, all.length - 1, all.length}) {
      begin();
      Files.write(answers, Arrays.copyOf(all, cut));
      assertThat(calculate("conversion")).isEqualTo(1);
      assertThat(answers).hasSameBinaryContentAs(whole);
      assertThat(rejected).hasSameBinaryContentAs(folder.resolve("whole.ndjson.rejected"));
      Files.delete(answers);
      Files.delete(rejected);
    }
  }

  /** Leaves the mark of a run that was interrupted before its first answer. */
  private void begin() throws IOException {
    Files.createSymbolicLink(answers, folder.resolve("no-such").resolve("file"));
    assertThat(calculate("conversion")).isEqualTo(2);
    Files.delete(answers);
  }

  @Test
  void answers_that_are_there_are_not_written_over() throws IOException {
    Files.writeString(records, kilograms(1));
    Files.writeString(answers, "mine");
    assertThat(calculate("conversion")).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1).allMatch(line -> line.contains("already"));
    assertThat(answers).hasContent("mine");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "calculate                                           | NAME",
        "calculate conversion                                | --out",
        "calculate conversion --out target/x                 | name either",
        "calculate conversion --in no-such --out x           | --in must be a file",
        "calculate convertion --in pom.xml --out target/x    | did you mean conversion",
        "calculate conversion --in pom.xml --out no-such/x   | --out must lie in a directory",
        "calculate conversion --in pom.xml --out target/x --part 3/2 | --part must be such as 1/4",
        "calculate conversion --in pom.xml --out target/x --part x | --part must be such as 1/4",
        "calculate conversion --in pom.xml --out target/x --query format=csv | JSON",
        "calculate conversion --in pom.xml --out target/x --query colour=1 | colour",
        "calculate conversion --in pom.xml --out target/x --rejected target/x | two files",
        "calculate conversion --in pom.xml --out target/x --data target/no-such | no store",
        "calculate conversion --in pom.xml --out target/x --data d --demo | exclude each other",
      })
  void wrong_use_is_one_line_and_exit_2(String line, String said) {
    assertThat(run(line.strip().split(" +"))).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1).allMatch(told -> told.contains(said));
    assertThat(Path.of("target/x")).doesNotExist();
  }

  @Test
  void an_interrupted_run_is_not_taken_up_with_other_records() throws IOException {
    Files.writeString(records, kilograms(1));
    begin();
    Files.writeString(records, kilograms(2));
    assertThat(calculate("conversion")).isEqualTo(2);
    assertThat(err.toString()).contains("other records");
    assertThat(new String(Files.readAllBytes(records), StandardCharsets.UTF_8)).contains("2 kg");
  }
}
