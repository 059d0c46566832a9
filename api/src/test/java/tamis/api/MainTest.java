package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MainTest {
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();

  private int run(Map<String, String> environment, String... arguments) {
    return Main.commandLine(environment)
        .setOut(new PrintWriter(out))
        .setErr(new PrintWriter(err))
        .execute(arguments);
  }

  @Test
  void version_tells_the_four_versions() {
    assertThat(run(Map.of(), "--version")).isZero();
    assertThat(out.toString().lines())
        .hasSize(4)
        .anyMatch(line -> line.matches("program \\d+\\.\\d+\\.\\d+"))
        .anyMatch(line -> line.matches("spi \\d+"))
        .anyMatch(line -> line.matches("tables \\d+"))
        .anyMatch(line -> line.matches("store \\d+"));
  }

  @Test
  void help_names_the_commands_that_exist() {
    assertThat(run(Map.of(), "--help")).isZero();
    assertThat(out.toString())
        .contains("serve", "backup", "restore", "export", "import")
        .doesNotContain("keys");
  }

  @ParameterizedTest(name = "{0}")
  @CsvSource(
      delimiter = '|',
      value = {
        "serv                        | serv",
        "serve --port x              | --port must be a whole number from 0 to 65535, was x",
        "serve --port 65536          | --port must be a whole number from 0 to 65535, was 65536",
        "serve --prot 1              | --prot",
        "serve --plugins /no/such    | --plugins must be a directory, was /no/such",
        "serve extra                 | extra",
      })
  void wrong_use_is_one_line_and_exit_2(String line, String said) {
    assertThat(run(Map.of(), line.strip().split(" "))).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1).allMatch(told -> told.contains(said));
    assertThat(out.toString()).isEmpty();
  }

  @Test
  void no_command_is_wrong_use() {
    assertThat(run(Map.of())).isEqualTo(2);
    assertThat(err.toString().lines()).hasSize(1);
  }

  @Test
  void an_unknown_setting_in_the_environment_is_wrong_use() {
    assertThat(run(Map.of("TAMIS_PROT", "1"), "serve", "--port", "0")).isEqualTo(2);
    assertThat(err.toString()).contains("TAMIS_PROT sets nothing; did you mean TAMIS_PORT");
  }
}
