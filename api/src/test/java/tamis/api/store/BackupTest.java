package tamis.api.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static tamis.api.store.StoreContract.cream;
import static tamis.api.store.StoreContract.ingredient;
import static tamis.api.store.StoreContract.observation;
import static tamis.api.store.StoreContract.prices;
import static tamis.api.store.StoreContract.trial;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Out and in again, between both databases, to the byte. */
class BackupTest {
  @TempDir Path directory;

  @ParameterizedTest(name = "{0} to {1}")
  @CsvSource({"sqlite,sqlite", "sqlite,postgresql", "postgresql,sqlite", "postgresql,postgresql"})
  void what_goes_out_comes_in_to_the_byte(String from, String to) {
    try (var source = filled(open(from, "a"));
        var target = open(to, "b")) {
      byte[] dump = dump(source);
      Load.into(target, new ByteArrayInputStream(dump), false);
      assertThat(new String(dump(target), StandardCharsets.UTF_8))
          .isEqualTo(new String(dump, StandardCharsets.UTF_8));
      isTheSame(target, source);
    }
  }

  @ParameterizedTest(name = "{0} to {1}")
  @CsvSource({"sqlite,sqlite", "sqlite,postgresql", "postgresql,sqlite", "postgresql,postgresql"})
  void a_backup_is_restored(String from, String to) {
    Path backup = directory.resolve("backup");
    try (var source = filled(open(from, "a"))) {
      Backup.write(source, backup);
      assertThatThrownBy(() -> Backup.write(source, backup)).hasMessageContaining("exists already");
      restored(backup, to, false);
      try (var target = open(to, "b")) {
        isTheSame(target, source);
        target.create(cream("later", "Later"), "local");
      }
      assertThatThrownBy(() -> restored(backup, to, false)).isInstanceOf(UnusableStore.class);
      restored(backup, to, true);
      try (var target = open(to, "b")) {
        isTheSame(target, source);
      }
    }
  }

  private String restoredUrl;

  private void restored(Path backup, String to, boolean replace) {
    if (to.equals("sqlite")) {
      try (var held = DataDirectory.hold(directory.resolve("b"))) {
        Backup.restore(backup, held, replace);
      }
    } else {
      try (var store = open(to, "b")) {
        Backup.restore(backup, store, replace);
      }
    }
  }

  @Test
  void a_backup_is_taken_while_others_write() throws Exception {
    try (var source = filled(open("sqlite", "a"))) {
      var writer =
          new Thread(
              () -> {
                for (int i = 0; i < 200; i++) {
                  source.create(cream("while-" + i, "While"), "local");
                }
              });
      writer.start();
      Backup.write(source, directory.resolve("backup"));
      writer.join();
      restored(directory.resolve("backup"), "sqlite", false);
      try (var target = open("sqlite", "b")) {
        long revision = target.revision();
        assertThat(revision).isBetween(6L, 206L);
        assertThat(target.list(Kind.FORMULA, "while", 500, null).rows())
            .hasSize((int) revision - 6);
      }
    }
  }

  @Test
  void a_damaged_store_is_replaced_by_its_backup() throws IOException {
    Path backup = directory.resolve("backup");
    try (var source = filled(open("sqlite", "a"))) {
      Backup.write(source, backup);
    }
    Path store = DataDirectory.fileIn(Files.createDirectories(directory.resolve("b")));
    Files.writeString(store, "no store ".repeat(1_000));
    restored(backup, "sqlite", true);
    try (var target = open("sqlite", "b")) {
      assertThat(target.read(Kind.FORMULA, "cream").number()).isEqualTo(2);
    }
  }

  @Test
  void a_damaged_backup_leaves_the_store_as_it_is() throws IOException {
    Path backup = directory.resolve("backup");
    try (var source = filled(open("sqlite", "b"))) {
      Backup.write(source, backup);
      byte[] bytes = Files.readAllBytes(backup);
      Files.write(backup, java.util.Arrays.copyOf(bytes, bytes.length / 2));
    }
    assertThatThrownBy(() -> restored(backup, "sqlite", true)).isInstanceOf(UnusableStore.class);
    try (var files = Files.list(directory.resolve("b"))) {
      assertThat(files.filter(file -> file.toString().contains(".part"))).isEmpty();
    }
    try (var target = open("sqlite", "b")) {
      assertThat(target.read(Kind.FORMULA, "cream").number()).isEqualTo(2);
    }
  }

  @ParameterizedTest(name = "{2}")
  @CsvSource(
      delimiter = '|',
      value = {
        "\"number\":2 | \"number\":3 | comes with revision 3 where 2 is next",
        "\"kind\":\"trial\" | \"kind\":\"trail\" | no kind of document",
        "\"150 g\" | \"150 q\" | line 2",
        "\"author\":\"local\" | \"author\":7 | `author` is missing",
        "\"lines\":1 | \"lines\":2 | the first line tells of",
      })
  void lines_that_cannot_be_kept_are_named_and_nothing_is(String from, String to, String said) {
    try (var source = filled(open("sqlite", "a"));
        var target = open("sqlite", "b")) {
      String dump = new String(dump(source), StandardCharsets.UTF_8);
      assertThat(dump).contains(from);
      byte[] spoilt = dump.replace(from, to).getBytes(StandardCharsets.UTF_8);
      assertThatThrownBy(() -> Load.into(target, new ByteArrayInputStream(spoilt), false))
          .isInstanceOf(Load.Rejected.class)
          .hasMessageContaining(said);
      assertThat(target.revision()).isZero();
      assertThat(target.list(Kind.FORMULA, "", 10, null).rows()).isEmpty();
    }
  }

  @Test
  void what_is_no_dump_is_refused() {
    try (var target = open("sqlite", "b")) {
      for (String text : List.of("", "hello", "{\"kind\":\"formula\"}")) {
        byte[] bytes = text.getBytes(StandardCharsets.UTF_8);
        assertThatThrownBy(() -> Load.into(target, new ByteArrayInputStream(bytes), false))
            .isInstanceOf(UnusableStore.class);
      }
    }
  }

  private SqlStore open(String kind, String name) {
    if (kind.equals("sqlite")) {
      try {
        Path file = DataDirectory.fileIn(Files.createDirectories(directory.resolve(name)));
        return SqlStore.sqlite(file, Clock.systemUTC());
      } catch (IOException failed) {
        throw new IllegalStateException(failed);
      }
    }
    String url = name.equals("b") && restoredUrl != null ? restoredUrl : null;
    if (url == null) {
      url = PostgresForTests.emptySchema();
      restoredUrl = name.equals("b") ? url : null;
    }
    return SqlStore.postgresql(url, PostgresForTests.USER, null, Clock.systemUTC());
  }

  private static SqlStore filled(SqlStore store) {
    store.create(cream("cream", "Coffee cream \"1\" ☕ \u0000 ,\"document\":"), "local");
    store.replace(cream("cream", "Second"), 1, "baker");
    store.create(Document.of(ingredient("pear-dried", "Dried pears")), "local");
    store.create(Document.of(prices("11.95 EUR")), "local");
    store.create(cream("gone", "Gone"), "local");
    store.delete(Kind.FORMULA, "gone", 1, "local");
    store.create(Document.of(trial("t1", observation("o1", "104 °C"))), "local");
    store.observe("t1", observation("o2", "112 °C"), "probe");
    store.replace(Document.of(trial("t1", observation("o2", "112 °C"))), 1, "local");
    store.observe("t1", observation("o3", "118 °C"), "probe");
    return store;
  }

  private static void isTheSame(SqlStore target, SqlStore source) {
    assertThat(dump(target)).isEqualTo(dump(source));
    assertThat(target.revision()).isEqualTo(source.revision());
    assertThat(target.trials()).isEqualTo(source.trials());
    assertThat(target.shelf().written()).isEqualTo(source.shelf().written());
    assertThat(target.read(Kind.FORMULA, "gone")).isNull();
    assertThat(target.list(Kind.FORMULA, "second", 10, null).rows()).hasSize(1);
    assertThat(target.list(Kind.FORMULA, "coffee", 10, null).rows()).isEmpty();
    assertThat(target.shelf().ingredientsNamed("dried pears")).hasSize(1);
    assertThat(target.shelf().trial("t1").observations()).hasSize(2);
    assertThat(target.shelf().trialsOf("cream")).hasSize(1);
  }

  private static byte[] dump(SqlStore store) {
    var out = new ByteArrayOutputStream();
    Dump.write(store, out);
    return out.toByteArray();
  }
}
