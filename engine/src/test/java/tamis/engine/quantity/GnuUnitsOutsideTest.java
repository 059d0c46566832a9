package tamis.engine.quantity;

import static java.util.concurrent.TimeUnit.SECONDS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.aggregator.AggregateWith;
import org.junit.jupiter.params.provider.CsvFileSource;

/**
 * Asks GNU units itself, where it is installed. In a continuous build it must be: a skip would hide
 * a broken installation for ever.
 */
@Tag("outside-check")
class GnuUnitsOutsideTest {
  private static final String PROGRAM = "units";

  @BeforeAll
  static void the_program_is_there() {
    boolean present = present();
    assumeTrue(present || "true".equals(System.getenv("CI")), "GNU units is not installed");
    assertThat(present).as("GNU units must be installed here: apt-get install units").isTrue();
  }

  @ParameterizedTest(name = "{0} {7} {8} in {1} ({2})")
  @CsvFileSource(resources = "gnu-units.csv", numLinesToSkip = 1, encoding = "UTF-8")
  void conversions_agree_with_what_is_printed_now(
      @AggregateWith(GnuUnits.Reader.class) GnuUnits row) throws Exception {
    double theirs = ask(row.from(), row.to());
    assertThat(row.ours()).isEqualTo(theirs, within(row.room(theirs)));
  }

  private static boolean present() {
    try {
      return new ProcessBuilder(PROGRAM, "--version").start().waitFor() == 0;
    } catch (IOException absent) {
      return false;
    } catch (InterruptedException stopped) {
      throw new IllegalStateException(stopped);
    }
  }

  /** Errors are printed to standard output with exit 1, and the answer depends on the locale. */
  private static double ask(String from, String to) throws IOException, InterruptedException {
    Process process =
        new ProcessBuilder(PROGRAM, "-l", "en_US", "-o", "%.15g", "-t", from, to)
            .redirectErrorStream(true)
            .start();
    String printed =
        new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
    assertThat(process.waitFor(10, SECONDS)).isTrue();
    assertThat(process.exitValue()).as(printed).isZero();
    return Double.parseDouble(printed);
  }
}
