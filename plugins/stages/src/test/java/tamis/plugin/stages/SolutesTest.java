package tamis.plugin.stages;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class SolutesTest {
  private static final double SEA = WaterVapour.SEA_LEVEL_PASCALS;

  @ParameterizedTest(name = "{0} % boils at {1} °C")
  @CsvFileSource(resources = "boiling-by-sugar.csv", numLinesToSkip = 1)
  void sucrose_boils_as_the_equation_and_near_the_older_table(
      double percent, double celsius, Double elevation, String source) {
    double boils = Solutes.SUCROSE.boilingPoint(percent, SEA);
    assertThat(boils).isCloseTo(celsius, within(0.02));
    if (elevation != null) {
      double tolerance = percent >= 70 ? 3.0 : 1.2;
      assertThat(boils - WaterVapour.boilingPoint(SEA)).isCloseTo(elevation, within(tolerance));
    }
  }

  @ParameterizedTest(name = "{0} °Bx at {1} °C")
  @CsvFileSource(resources = "boiling-gnu-units.csv", numLinesToSkip = 1)
  void another_program_agrees_up_to_90_percent(double brix, double celsius, String source) {
    assertThat(Solutes.SUCROSE.boilingPoint(brix, SEA)).isCloseTo(celsius, within(0.5));
  }

  @Test
  void the_older_table_is_no_match_for_soft_ball() {
    assertThat(Solutes.SUCROSE.boilingPoint(80, SEA))
        .as("books that call 80 %% soft ball follow a table that boils at 112 °C")
        .isLessThan(110);
  }

  @Test
  void temperature_and_percent_undo_each_other() {
    Random random = new Random(20260411);
    for (int i = 0; i < 500; i++) {
      double percent = 0.5 + random.nextDouble() * 97.4;
      double pascals = WaterVapour.atmosphere(random.nextDouble() * 5000);
      double celsius = Solutes.SUCROSE.boilingPoint(percent, pascals);
      assertThat(Solutes.SUCROSE.percent(celsius, pascals)).isCloseTo(percent, within(1e-6));
    }
  }

  @Test
  void more_sugar_boils_hotter_and_more_height_cooler() {
    double before = 0;
    for (double percent = 1; percent < 98; percent += 0.5) {
      double here = Solutes.SUCROSE.boilingPoint(percent, SEA);
      assertThat(here).isGreaterThan(before);
      assertThat(Solutes.SUCROSE.boilingPoint(percent, WaterVapour.atmosphere(100)))
          .isLessThan(here);
      before = here;
    }
  }

  @Test
  void dilute_syrup_follows_the_ebullioscopic_constant() {
    double molality = 20.0 / 80 / 342.2965 * 1000;
    assertThat(Solutes.SUCROSE.boilingPoint(20, SEA) - WaterVapour.boilingPoint(SEA))
        .isCloseTo(0.513 * molality, within(0.05));
  }

  @Test
  void simple_sugars_boil_hotter_than_as_much_sucrose() {
    Solutes glucose = Solutes.of(1, Solutes.HEXOSE_GRAMS_PER_MOLE, Solutes.HEXOSE_K);
    for (double percent = 10; percent <= 85; percent += 5) {
      assertThat(glucose.boilingPoint(percent, SEA))
          .isGreaterThan(Solutes.SUCROSE.boilingPoint(percent, SEA));
    }
  }
}
