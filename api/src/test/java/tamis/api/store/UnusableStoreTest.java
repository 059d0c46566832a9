package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.Clock;
import java.util.Arrays;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What cannot be used is said in one line, and stays as it is. */
class UnusableStoreTest {
  @TempDir Path directory;

  @Test
  void a_text_is_no_store() throws IOException {
    leftAlone(Files.writeString(file(), "Not a store at all, but a text. ".repeat(200)), "damaged");
  }

  @Test
  void an_empty_file_becomes_a_store() throws IOException {
    Files.createFile(file());
    try (var store = SqlStore.sqlite(file(), Clock.systemUTC())) {
      assertThat(store.revision()).isZero();
    }
  }

  @Test
  void a_store_cut_short_is_damaged() throws IOException {
    byte[] whole = bytesOfAStore();
    leftAlone(Files.write(file(), Arrays.copyOf(whole, whole.length / 2)), "damaged");
  }

  @Test
  void a_store_with_other_bytes_in_the_middle_is_damaged() throws IOException {
    byte[] bytes = bytesOfAStore();
    byte[] other = new byte[bytes.length / 3];
    new Random(7).nextBytes(other);
    System.arraycopy(other, 0, bytes, bytes.length / 3, other.length);
    leftAlone(Files.write(file(), bytes), "damaged");
  }

  @Test
  void a_newer_store_is_left_to_the_newer_program() throws IOException {
    bytesOfAStore();
    sqlite("UPDATE store SET schema_version = 9");
    leftAlone(file(), "the store has schema 9, this program knows up to 4");
  }

  @Test
  void tables_of_somebody_else_are_not_touched() throws IOException {
    sqlite("CREATE TABLE guest (name TEXT)");
    leftAlone(file(), "not Tamis' own");
  }

  @Test
  void a_directory_in_use_is_refused() {
    try (var held = DataDirectory.hold(directory)) {
      assertThat(held.file().getParent()).isEqualTo(directory);
      assertThatThrownBy(() -> DataDirectory.hold(directory))
          .isInstanceOf(UnusableStore.class)
          .hasMessageContaining("in use by another Tamis");
    }
    DataDirectory.hold(directory).close();
  }

  @Test
  void a_file_is_no_directory() throws IOException {
    Path taken = Files.createFile(directory.resolve("taken"));
    assertThatThrownBy(() -> DataDirectory.hold(taken)).isInstanceOf(UnusableStore.class);
  }

  @Test
  void a_wrong_password_is_said_without_it() {
    String url = PostgresForTests.url() + "?sslpassword=sesame";
    assertThatThrownBy(
            () -> SqlStore.postgresql(url, PostgresForTests.LOCKED_USER, "wrong", clock()))
        .isInstanceOf(UnusableStore.class)
        .hasMessageContaining("does not take this user and password")
        .hasMessageNotContaining("wrong")
        .hasMessageNotContaining("sesame");
    assertThatThrownBy(
            () ->
                SqlStore.postgresql(
                    PostgresForTests.url().replace("/postgres", "/nowhere"),
                    PostgresForTests.USER,
                    null,
                    clock()))
        .hasMessageContaining("no such database");
  }

  @Test
  void an_unreachable_host_is_named() {
    assertThatThrownBy(
            () -> SqlStore.postgresql("jdbc:postgresql://127.0.0.1:1/shop", "u", "p", clock()))
        .isInstanceOf(UnusableStore.class)
        .hasMessage("the database at 127.0.0.1:1/shop cannot be reached");
  }

  @Test
  void another_kind_of_database_is_refused() {
    assertThatThrownBy(() -> SqlStore.postgresql("jdbc:other://u:sesame@h/n", null, null, clock()))
        .isInstanceOf(UnusableStore.class)
        .hasMessageNotContaining("sesame");
  }

  private void leftAlone(Path file, String said) throws IOException {
    byte[] before = Files.readAllBytes(file);
    assertThatThrownBy(() -> SqlStore.sqlite(file, clock()))
        .isInstanceOf(UnusableStore.class)
        .hasMessageContaining(said)
        .satisfies(thrown -> assertThat(thrown.getMessage().lines()).hasSize(1));
    assertThat(Files.readAllBytes(file)).isEqualTo(before);
  }

  private byte[] bytesOfAStore() throws IOException {
    try (var store = SqlStore.sqlite(file(), clock())) {
      for (int i = 0; i < 40; i++) {
        store.create(StoreContract.cream("cream-" + i, "Cream " + "x".repeat(500)), "local");
      }
    }
    byte[] bytes = Files.readAllBytes(file());
    assertThat(new String(bytes, 0, 15, StandardCharsets.US_ASCII)).isEqualTo("SQLite format 3");
    return bytes;
  }

  private void sqlite(String sql) {
    try (var connection = DriverManager.getConnection("jdbc:sqlite:" + file());
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException failed) {
      throw new IllegalStateException(failed);
    }
  }

  private Path file() {
    return directory.resolve("tamis.db");
  }

  private static Clock clock() {
    return Clock.systemUTC();
  }
}
