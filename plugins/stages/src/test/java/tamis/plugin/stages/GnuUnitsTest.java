package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Boiling points beside those of GNU units; absent, it fails where CI is set and is skipped at a
 * desk.
 */
@Tag("outside-check")
class GnuUnitsTest {

  @ParameterizedTest
  @ValueSource(ints = {10, 20, 30, 40, 50, 60, 70, 75, 80, 85, 90})
  void a_syrup_boils_where_gnu_units_says(int brix) throws Exception {
    assertThat(Solutes.SUCROSE.boilingPoint(brix, WaterVapour.SEA_LEVEL_PASCALS))
        .isCloseTo(units("brix(" + brix + ")", "sugar_bpC"), within(0.5));
  }

  private static double units(String from, String to) throws IOException, InterruptedException {
    Process process;
    try {
      process = new ProcessBuilder("units", "-l", "en_US", "-o", "%.15g", "-t", from, to).start();
    } catch (IOException absent) {
      assumeTrue("true".equals(System.getenv("CI")), "GNU units is not installed");
      throw absent;
    }
    assertThat(process.waitFor(10, TimeUnit.SECONDS)).isTrue();
    String text = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
    assertThat(process.exitValue()).as(text).isZero();
    return Double.parseDouble(text.strip());
  }
}
