package tamis.api.command;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.condition.EnabledOnOs;
import org.junit.jupiter.api.condition.OS;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import tamis.api.store.Backup;
import tamis.api.store.Document;
import tamis.api.store.GuardedDatabase;
import tamis.api.store.SqlStore;
import tamis.engine.price.PriceList;

/** A store that cannot be used is one clear line and exit 2, and stays as it is. */
class UnusableStoreCommandTest {
  @TempDir Path directory;

  @ParameterizedTest
  @ValueSource(strings = {"serve", "export", "backup", "import"})
  void a_file_that_is_no_store(String command) throws IOException {
    Files.writeString(file(), "Not a store at all, but a text. ".repeat(200));
    refused(Map.of(), command, "damaged");
  }

  @ParameterizedTest
  @ValueSource(strings = {"serve", "export", "backup", "import"})
  void a_store_of_a_newer_program(String command) throws IOException, SQLException {
    SqlStore.sqlite(file(), Clock.systemUTC()).close();
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        var statement = connection.createStatement()) {
      statement.execute("UPDATE store SET schema_version = 9");
    }
    refused(Map.of(), command, "has schema 9, this program knows up to 4");
  }

  @ParameterizedTest
  @ValueSource(strings = {"serve", "export"})
  void a_wrong_password(String command) throws IOException {
    var environment =
        Map.of(
            "TAMIS_DB",
            GuardedDatabase.url() + "?sslpassword=sesame",
            "TAMIS_DB_USER",
            GuardedDatabase.USER,
            "TAMIS_DB_PASSWORD",
            "opensesame");
    refused(environment, command, "does not take this user and password");
  }

  @ParameterizedTest
  @ValueSource(strings = {"serve", "export"})
  void a_host_that_is_not_there(String command) throws IOException {
    var environment =
        Map.of(
            "TAMIS_DB", "jdbc:postgresql://127.0.0.1:1/shop",
            "TAMIS_DB_USER", "shop",
            "TAMIS_DB_PASSWORD", "opensesame");
    refused(environment, command, "127.0.0.1:1/shop cannot be reached");
  }

  @Test
  void a_directory_that_another_program_serves() throws Exception {
    try (var first = tamis.api.store.Serving.start(directory)) {
      for (String command : new String[] {"serve", "import"}) {
        refused(Map.of(), command, "in use by another Tamis");
      }
      var backup = ProgramRun.of(Map.of(), "backup", "--data", directory.toString(), saved());
      assertThat(backup.exit()).as(backup.err()).isZero();
      assertThat(first.get("/health/ready")).contains("\"status\":\"ready\"");
    }
  }

  @ParameterizedTest
  @ValueSource(strings = {"backup", "export"})
  void a_file_in_a_folder_that_is_not_there(String command) throws IOException {
    SqlStore.sqlite(file(), Clock.systemUTC()).close();
    Path nowhere = directory.resolve("nowhere").resolve("saved");
    var run =
        command.equals("backup")
            ? ProgramRun.of(Map.of(), command, "--data", "" + directory, "" + nowhere)
            : ProgramRun.of(Map.of(), command, "--data", "" + directory, "--out", "" + nowhere);
    assertThat(run.exit()).as(run.err()).isEqualTo(2);
    assertThat(run.err().lines()).singleElement().asString().contains(nowhere + " cannot be");
    assertThat(run.err()).doesNotContain("Exception").doesNotContain("Refusal");
  }

  @Test
  @EnabledOnOs(OS.LINUX)
  void a_full_disk_ends_an_export_in_one_line() {
    SqlStore.sqlite(file(), Clock.systemUTC()).close();
    var run = ProgramRun.of(Map.of(), "export", "--data", "" + directory, "--out", "/dev/full");
    assertThat(run.exit()).as(run.err()).isEqualTo(2);
    assertThat(run.err().lines()).singleElement().asString().contains("the export is not whole");
  }

  @Test
  void a_restore_over_documents_without_replace() throws IOException {
    try (var store = SqlStore.sqlite(file(), Clock.systemUTC())) {
      store.create(Document.of(PriceList.empty()), "local");
      Backup.write(store, Path.of(saved()));
    }
    byte[] before = Files.readAllBytes(file());
    var refused = ProgramRun.of(Map.of(), "restore", "--data", "" + directory, saved());
    assertThat(refused.exit()).as(refused.err()).isEqualTo(2);
    assertThat(refused.err().lines()).singleElement().asString().contains("--replace");
    assertThat(Files.readAllBytes(file())).isEqualTo(before);
    var replaced =
        ProgramRun.of(Map.of(), "restore", "--replace", "--data", "" + directory, saved());
    assertThat(replaced.exit()).as(replaced.err()).isZero();
  }

  private void refused(Map<String, String> environment, String command, String said)
      throws IOException {
    byte[] before = Files.exists(file()) ? Files.readAllBytes(file()) : new byte[0];
    var run =
        switch (command) {
          case "serve" ->
              environment.isEmpty()
                  ? ProgramRun.of(environment, command, "--port", "0", "--data", "" + directory)
                  : ProgramRun.of(environment, command, "--port", "0");
          case "import" -> {
            Path dump = Files.writeString(directory.resolve("dump.ndjson"), "{}\n");
            yield ProgramRun.of(environment, command, "--data", "" + directory, "" + dump);
          }
          case "export" ->
              environment.isEmpty()
                  ? ProgramRun.of(environment, command, "--data", "" + directory)
                  : ProgramRun.of(environment, command);
          default ->
              environment.isEmpty()
                  ? ProgramRun.of(environment, command, "--data", "" + directory, saved())
                  : ProgramRun.of(environment, command, saved());
        };
    assertThat(run.exit()).as(run.err()).isEqualTo(2);
    assertThat(run.out()).isEmpty();
    assertThat(run.err().lines()).singleElement().asString().contains(said);
    assertThat(run.err()).doesNotContain("sesame").doesNotContain("Exception");
    assertThat(Files.exists(file()) ? Files.readAllBytes(file()) : new byte[0]).isEqualTo(before);
  }

  private String saved() {
    return directory.resolve("saved").toString();
  }

  private Path file() {
    return directory.resolve("tamis.db");
  }
}
