package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvFileSource;
import org.junit.jupiter.params.provider.CsvSource;

/** Published networks, with every early and late time they print. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class NetworksTest {
  private final Map<String, Timeline.Result> results = new TreeMap<>();

  @BeforeAll
  void work_out_every_network() throws Exception {
    Map<String, List<Map<String, Object>>> networks = new LinkedHashMap<>();
    try (var lines =
        new java.io.BufferedReader(
            new java.io.InputStreamReader(
                getClass().getResourceAsStream("/networks.csv"),
                java.nio.charset.StandardCharsets.UTF_8))) {
      lines.readLine();
      for (String line = lines.readLine(); line != null; line = lines.readLine()) {
        String[] cells = line.split(",", 10);
        List<String> after = cells[3].isEmpty() ? List.of() : List.of(cells[3].split(" "));
        networks
            .computeIfAbsent(cells[0], name -> new ArrayList<>())
            .add(Map.of("id", cells[1], "minutes", Double.parseDouble(cells[2]), "after", after));
      }
    }
    networks.forEach(
        (name, activities) ->
            results.put(name, Timelines.result(Map.of("activities", activities))));
  }

  @ParameterizedTest(name = "{0} {1}")
  @CsvFileSource(resources = "/networks.csv", numLinesToSkip = 1)
  void early_and_late_times_are_those_that_are_printed(
      String network,
      String activity,
      double minutes,
      String after,
      double earliestStart,
      double earliestFinish,
      double latestStart,
      double latestFinish,
      double spare,
      String source) {
    Step step =
        results.get(network).steps().stream()
            .filter(s -> s.id().equals(activity))
            .findFirst()
            .orElseThrow();
    assertThat(
            List.of(
                step.minutes(),
                step.earliestStart(),
                step.earliestFinish(),
                step.latestStart(),
                step.latestFinish(),
                step.spare()))
        .as(source)
        .containsExactly(minutes, earliestStart, earliestFinish, latestStart, latestFinish, spare);
  }

  @ParameterizedTest(name = "{0}: {1} by {2}")
  @CsvSource({
    "lecture-eleven, 41, A B D E G I J K",
    "textbook-eight, 15, A C E G H",
    "printed-seven, 20, 1-3 3-4 4-5 5-6",
    "building-fourteen, 44, A B C E F J L N",
    "homework-ten, 34, A B C F H I J"
  })
  void length_and_critical_path_are_those_that_are_printed(
      String network, double minutes, String path) {
    assertThat(results.get(network).minutes()).isEqualTo(minutes);
    assertThat(results.get(network).criticalPath()).containsExactly(path.split(" "));
  }

  @Test
  void the_wrong_figure_of_the_public_exercise_is_not_repeated() {
    assertThat(results.get("homework-ten").steps())
        .filteredOn(step -> List.of("D", "E").contains(step.id()))
        .extracting(Step::latestFinish)
        .containsOnly(23.0)
        .doesNotContain(14.0);
  }

  @Test
  void ten_thousand_activities_in_the_worst_order_are_done_at_once() {
    List<Map<String, Object>> chain = new ArrayList<>();
    for (int i = 9_999; i >= 0; i--) {
      chain.add(
          Map.of(
              "id", "a" + i, "minutes", 1, "after", i == 0 ? List.of() : List.of("a" + (i - 1))));
    }
    Timeline.Result result = Timelines.result(Map.of("activities", chain));
    assertThat(result.minutes()).isEqualTo(10_000);
    assertThat(result.steps()).isSortedAccordingTo(Comparator.comparingDouble(Step::earliestStart));
  }
}
