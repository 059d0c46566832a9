package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.Random;
import org.hipparchus.distribution.discrete.HypergeometricDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;

class RankTestTest {
  private static final double EXACT = 1e-12;

  private static double[] figures(String words) {
    return Arrays.stream(words.split(" ")).mapToDouble(Double::parseDouble).toArray();
  }

  @ParameterizedTest(name = "{0} against {1}: {2} and {3} ({5})")
  @CsvFileSource(resources = "/rank-test.csv", delimiter = '|', numLinesToSkip = 1)
  void chances_of_published_and_counted_examples(
      String first, String second, double above, double apart, double superiority, String source) {
    RankTest oneSided = RankTest.above(figures(first), figures(second));
    RankTest twoSided = RankTest.apart(figures(first), figures(second));
    assertThat(oneSided.chance()).as(source).isEqualTo(above, within(EXACT));
    assertThat(twoSided.chance()).as(source).isEqualTo(apart, within(EXACT));
    assertThat(oneSided.superiority()).as(source).isEqualTo(superiority, within(EXACT));
  }

  /** Yes and no is Fisher's exact test: every table of two outcomes up to nine trials each. */
  @Test
  void yes_and_no_is_the_hypergeometric_distribution() {
    for (int kept = 1; kept <= 9; kept++) {
      for (int wrong = 1; wrong <= 9; wrong++) {
        for (int yesKept = 0; yesKept <= kept; yesKept++) {
          for (int yesWrong = 0; yesWrong <= wrong; yesWrong++) {
            var dealt = new HypergeometricDistribution(kept + wrong, yesKept + yesWrong, wrong);
            double expected = dealt.upperCumulativeProbability(yesWrong);
            double found = RankTest.above(flags(kept, yesKept), flags(wrong, yesWrong)).chance();
            assertThat(found)
                .as("%d of %d against %d of %d", yesKept, kept, yesWrong, wrong)
                .isEqualTo(expected, within(1e-10));
          }
        }
      }
    }
  }

  private static double[] flags(int size, int yes) {
    double[] flags = new double[size];
    Arrays.fill(flags, 0, yes, 1);
    return flags;
  }

  /** Against counting every way to deal, with ties; the seed is fixed. */
  @Test
  void it_is_what_counting_every_way_to_deal_gives() {
    Random random = new Random(20261125);
    for (int round = 0; round < 200; round++) {
      double[] first = random.ints(1 + random.nextInt(5), 0, 6).asDoubleStream().toArray();
      double[] second = random.ints(1 + random.nextInt(5), 0, 6).asDoubleStream().toArray();
      assertThat(RankTest.above(first, second).chance())
          .as("%s against %s", Arrays.toString(first), Arrays.toString(second))
          .isEqualTo(counted(first, second), within(EXACT));
    }
  }

  /** The part of all ways to deal whose second group wins as often or more often. */
  private static double counted(double[] first, double[] second) {
    double[] all = Arrays.copyOf(first, first.length + second.length);
    System.arraycopy(second, 0, all, first.length, second.length);
    int observed = -1;
    int asFar = 0;
    int ways = 0;
    int own = ((1 << second.length) - 1) << first.length;
    for (int pass = 0; pass < 2; pass++) {
      for (int dealt = 0; dealt < 1 << all.length; dealt++) {
        if (Integer.bitCount(dealt) == second.length) {
          int wins = doubledWins(all, dealt);
          observed = pass == 0 && dealt == own ? wins : observed;
          ways += pass;
          asFar += pass == 1 && wins >= observed ? 1 : 0;
        }
      }
    }
    return asFar / (double) ways;
  }

  private static int doubledWins(double[] all, int dealt) {
    int wins = 0;
    for (int i = 0; i < all.length; i++) {
      for (int j = 0; j < all.length; j++) {
        if ((dealt >> i & 1) == 1 && (dealt >> j & 1) == 0) {
          wins += all[i] > all[j] ? 2 : all[i] == all[j] ? 1 : 0;
        }
      }
    }
    return wins;
  }

  @Test
  void the_least_chance_is_that_of_the_widest_separation() {
    double[] three = {1, 2, 3};
    double[] others = {4, 5, 6};
    assertThat(RankTest.above(others, three).least()).isEqualTo(1 / 20.0, within(EXACT));
    assertThat(RankTest.apart(others, three).least()).isEqualTo(2 / 20.0, within(EXACT));
    double[] alike = {7, 7, 7};
    assertThat(RankTest.above(alike, alike).least()).isEqualTo(1, within(EXACT));
  }

  @Test
  void sixty_trials_are_counted_out_and_stay_a_chance() {
    double[] first = new Random(1).doubles(30).toArray();
    double[] second = new Random(2).doubles(30).map(figure -> figure + 0.4).toArray();
    assertThat(RankTest.above(first, second).chance()).isBetween(0.0, 0.01);
    assertThat(RankTest.apart(first, second).chance()).isBetween(0.0, 0.01);
  }
}
