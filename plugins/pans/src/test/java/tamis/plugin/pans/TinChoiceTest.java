package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import tamis.engine.note.Remark;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Plugin;

class TinChoiceTest extends CalculationContract<TinChoice.Input, TinChoice.Result> {
  @Override
  protected TinChoice calculation() {
    return new TinChoice();
  }

  @Override
  protected Plugin plugin() {
    return new PansPlugin();
  }

  @Test
  void the_first_that_fits_is_not_the_best() {
    // A litre: 900 and 400 take it, and so do two of 500 without a drop to spare.
    TinChoice.Result fewest = result(litre(900, 1, 500, 2, 400, 1));
    assertThat(fewest.tins()).isEqualTo(2);
    assertThat(fewest.emptyMillilitres()).isEqualTo(0, within(1e-6));
    assertThat(fewest.chosen()).extracting(TinChoice.Chosen::shelf).containsExactly(1);
    assertThat(fewest.exact()).isTrue();
  }

  @Test
  void fewest_tins_and_least_empty_differ_where_they_must() {
    Map<String, Object> input = litre(1500, 1, 350, 3);
    assertThat(result(input).tins()).isEqualTo(1);
    input.put("prefer", "least-empty");
    TinChoice.Result least = result(input);
    assertThat(least.tins()).isEqualTo(3);
    assertThat(least.emptyMillilitres()).isEqualTo(50, within(1e-6));
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("tamis.plugin.pans.Given#seeds")
  void the_search_finds_what_trying_all_sets_finds_and_nothing_overflows(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    List<Kind> kinds = new ArrayList<>();
    for (int i = random.nextInt(1, 5); i > 0; i--) {
      double holds = Math.rint(random.nextDouble(100, 3000));
      kinds.add(new Kind(holds, random.nextInt(4, 10) / 10.0, random.nextInt(1, 5)));
    }
    double room = kinds.stream().mapToDouble(kind -> kind.room() * kind.count()).sum();
    double batter = room * random.nextDouble(0.05, 1);
    for (boolean fewest : new boolean[] {true, false}) {
      String prefer = fewest ? "fewest-tins" : "least-empty";
      List<Map<String, Object>> shelf = kinds.stream().map(Kind::written).toList();
      TinChoice.Result found =
          result(Map.of("volume", batter + " ml", "shelf", shelf, "prefer", prefer));
      double[] best = {Double.MAX_VALUE, Double.MAX_VALUE};
      tryAll(kinds, 0, 0, 0, batter, fewest, best);
      assertThat((double) found.tins()).as(prefer).isEqualTo(best[fewest ? 0 : 1]);
      assertThat(Math.floor(found.emptyMillilitres() + 1e-6))
          .as(prefer)
          .isEqualTo(best[fewest ? 1 : 0]);
      assertNothingOverflows(found, kinds, batter);
    }
  }

  /** One kind of tin that is known by what it holds. */
  private record Kind(double holds, double fill, int count) {
    double room() {
      return holds * fill;
    }

    Map<String, Object> written() {
      return Map.of("pan", Map.of("capacity", holds + " ml"), "count", count, "fill", fill);
    }
  }

  private static void assertNothingOverflows(
      TinChoice.Result found, List<Kind> kinds, double batter) {
    double shared = 0;
    for (TinChoice.Chosen chosen : found.chosen()) {
      Kind kind = kinds.get(chosen.shelf());
      assertThat(chosen.count()).isBetween(1, kind.count());
      assertThat(chosen.fillPart()).isLessThanOrEqualTo(kind.fill() + 1e-12);
      assertThat(chosen.batterMillilitres()).isLessThanOrEqualTo(chosen.millilitres());
      shared += chosen.count() * chosen.batterMillilitres();
    }
    assertThat(shared).isEqualTo(batter, within(batter * 1e-8));
  }

  /** Every set, without any bound. */
  private static void tryAll(
      List<Kind> kinds,
      int i,
      int tins,
      double room,
      double batter,
      boolean fewest,
      double[] best) {
    if (i < kinds.size()) {
      Kind kind = kinds.get(i);
      for (int n = 0; n <= kind.count(); n++) {
        tryAll(kinds, i + 1, tins + n, room + n * kind.room(), batter, fewest, best);
      }
      return;
    }
    double empty = Math.floor(room - batter + 1e-6);
    double first = fewest ? tins : empty;
    double second = fewest ? empty : tins;
    boolean fits = room * (1 + 1e-9) >= batter && tins > 0;
    boolean better = first < best[0] - 1e-6 || (first < best[0] + 1e-6 && second < best[1] - 1e-6);
    if (fits && better) {
      best[0] = first;
      best[1] = second;
    }
  }

  @ParameterizedTest(name = "seed {0}")
  @MethodSource("tamis.plugin.pans.Given#seeds")
  void a_depth_is_kept_where_some_set_keeps_it(long seed) {
    SplittableRandom random = new SplittableRandom(seed);
    double wanted = random.nextDouble(1.5, 5);
    double batter = random.nextDouble(800, 6000);
    Map<String, Object> input = new HashMap<>();
    input.put("volume", batter + " ml");
    input.put("fill", 0.8);
    input.put("depth", wanted + " cm");
    input.put("shelf", List.of(Given.count("round-18x7_5-cm", 3), Given.count("round-24x5-cm", 3)));
    TinChoice.Result found = result(input);
    int fewest = fewestKeeping(batter, wanted);
    assertThat(found.keepsDepth()).isEqualTo(fewest < Integer.MAX_VALUE);
    if (found.keepsDepth()) {
      assertThat(found.tins()).isEqualTo(fewest);
      assertThat(found.chosen())
          .allSatisfy(tin -> assertThat(tin.depthCm()).isEqualTo(wanted, within(1.27 + 1e-6)));
    } else {
      assertThat(answer(read(input)).remarks()).extracting(Remark::code).contains("depth-not-kept");
    }
  }

  /** Straight tins filled alike stand at the same part of their heights. */
  private static int fewestKeeping(double batter, double wanted) {
    int fewest = Integer.MAX_VALUE;
    for (int deep = 0; deep <= 3; deep++) {
      for (int flat = 0; flat <= 3; flat++) {
        double room = Math.PI * (81 * 7.5 * deep + 144 * 5 * flat);
        double part = batter / room;
        boolean kept =
            part <= 0.8
                && (deep == 0 || Math.abs(part * 7.5 - wanted) <= 1.27)
                && (flat == 0 || Math.abs(part * 5 - wanted) <= 1.27);
        if (kept) {
          fewest = Math.min(fewest, deep + flat);
        }
      }
    }
    return fewest;
  }

  @Test
  void a_deeper_tin_is_passed_over_for_the_sake_of_depth() {
    // Two litres: one springform would do, 4.4 cm deep; shallow tins keep it near 3 cm.
    Map<String, Object> input = new HashMap<>();
    input.put("volume", "2 l");
    input.put("fill", 0.9);
    input.put(
        "shelf", List.of(Given.count("springform-24x7-cm", 1), Given.count("round-20x5-cm", 3)));
    assertThat(result(input).tins()).isEqualTo(1);
    input.put("depth", "3 cm");
    TinChoice.Result kept = result(input);
    assertThat(kept.keepsDepth()).isTrue();
    assertThat(kept.tins()).isEqualTo(2);
    assertThat(kept.chosen()).allSatisfy(c -> assertThat(c.depthCm()).isBetween(1.73, 4.27));
  }

  @Test
  void a_bakery_shelf_of_many_kinds_is_weighed_whole() {
    List<Map<String, Object>> shelf = new ArrayList<>();
    for (int i = 0; i < 12; i++) {
      shelf.add(Given.count(Map.of("capacity", 500 + 173 * i + " ml"), 6));
    }
    TinChoice.Result found = result(Map.of("volume", "17 l", "fill", 0.7, "shelf", shelf));
    assertThat(found.exact()).isTrue();
    assertThat(found.tins()).isEqualTo(11);
  }

  @Test
  void a_formula_is_shared_out_by_its_density_else_by_the_pans_it_names() {
    Map<String, Object> input = new HashMap<>();
    input.put("fill", 0.5);
    input.put("shelf", List.of(Given.count(Map.of("capacity", "1 l"), 5)));
    input.put("formula", Given.sponge(Map.of("batterDensity", "0.6 g/ml")));
    input.put("to", Map.of("factor", 2));
    TinChoice.Result byDensity = result(input);
    assertThat(byDensity.batterMillilitres()).isEqualTo(2000, within(1e-6));
    assertThat(byDensity.tins()).isEqualTo(4);
    assertThat(byDensity.chosen().get(0).grams()).isEqualTo(300, within(1e-6));
    input.put(
        "formula",
        Given.sponge(Map.of("pans", List.of(Given.count(Map.of("capacity", "1200 ml"), 1)))));
    assertThat(result(input).batterMillilitres()).isEqualTo(1200, within(1e-6));
    input.put("formula", Given.sponge(Map.of("portions", 4)));
    assertThat(Given.told(() -> result(input))).containsExactly("no-size /formula");
  }

  @Test
  void too_few_tins_are_refused() {
    assertThat(Given.told(() -> result(litre(500, 1)))).containsExactly("impossible /shelf");
  }

  @Test
  void a_half_empty_tin_is_remarked() {
    Map<String, Object> input =
        Map.of(
            "volume",
            "300 ml",
            "batter",
            "butter-cake",
            "shelf",
            List.of(Given.count("round-20x5-cm", 1)));
    assertThat(answer(read(input)).remarks())
        .extracting(Remark::code)
        .containsExactly("too-shallow");
  }

  @Test
  void what_cannot_be_meant_is_refused() {
    List<?> shelf = List.of(Map.of("pan", "round-20x5-cm", "mass", "500 g"));
    assertThat(Given.told(() -> read(Map.of("mass", "1 kg", "shelf", shelf))))
        .containsExactly("missing /batterDensity", "not-allowed /shelf/0/mass");
    List<?> none = List.of(Map.of("pan", "round-20x5-cm", "fill", 0));
    assertThat(Given.told(() -> read(Map.of("volume", "1 l", "fill", 0, "shelf", none))))
        .containsExactlyInAnyOrder("out-of-bounds /fill", "out-of-bounds /shelf/0/fill");
  }

  /** A litre of batter; pairs of millilitres and how many, all filled to the rim. */
  private static Map<String, Object> litre(int... pairs) {
    List<Map<String, Object>> shelf = new ArrayList<>();
    for (int i = 0; i < pairs.length; i += 2) {
      shelf.add(Given.count(Map.of("capacity", pairs[i] + " ml"), pairs[i + 1]));
    }
    return new HashMap<>(Map.of("volume", "1 l", "fill", 1, "shelf", shelf));
  }
}
