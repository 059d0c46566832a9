package tamis.engine.record;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What somebody may have meant by a word that is not known. */
class NearestTest {

  @ParameterizedTest(name = "{0}: {1}")
  @CsvSource({
    "boli, boil",
    "boi, boil",
    "boill, boil",
    "bail, boil",
    "sitr, stir",
    "BOIL, boil",
    "buter, butter",
    "lobi,",
    "glaze,",
    "water,"
  })
  void one_slip_in_a_short_word_is_seen_through(String given, String meant) {
    assertThat(Nearest.to(given, List.of("boil", "stir", "butter")))
        .isEqualTo(meant == null ? List.of() : List.of(meant));
  }
}
