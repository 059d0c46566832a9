package tamis.api;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.Test;

/** The engine and our plugins are a plain library. */
class LibraryTest {

  @Test
  void a_formula_is_scaled_without_http() {
    var said = new ByteArrayOutputStream();
    var before = System.out;
    System.setOut(new PrintStream(said, true, StandardCharsets.UTF_8));
    try {
      ScalingWithoutHttp.main(new String[0]);
    } finally {
      System.setOut(before);
    }
    var lines = said.toString(StandardCharsets.UTF_8).lines().toList();
    assertThat(lines).hasSize(3);
    assertThat(lines.get(0)).matches("[12]\\.\\d+ kg .*[Ff]lour.*");
    assertThat(lines.get(1)).matches("[12]\\.\\d+ kg Water.*");
    assertThat(lines.get(2)).matches("\\d+ g .*[Ss]alt.*");
  }

  @Test
  void ten_lines_are_enough() throws IOException {
    var example = Path.of("src/test/java/tamis/api/ScalingWithoutHttp.java");
    var lines = Files.readAllLines(example);
    int from = lines.indexOf("    // region scaling");
    assertThat(lines.indexOf("    // endregion") - from - 1).isLessThanOrEqualTo(10);
  }
}
