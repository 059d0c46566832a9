package tamis.plugin.timeline;

import static org.assertj.core.api.Assertions.assertThat;
import static tamis.plugin.timeline.Timelines.cream;
import static tamis.plugin.timeline.Timelines.formula;
import static tamis.plugin.timeline.Timelines.map;
import static tamis.plugin.timeline.Timelines.result;
import static tamis.plugin.timeline.Timelines.stage;
import static tamis.plugin.timeline.Timelines.with;

import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

class StationChartTest {
  private static Document chart(Map<String, ?> input) throws Exception {
    String svg = new StationChart(result(input)).svg();
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
  }

  private static List<Element> all(Document chart, String name) {
    List<Element> elements = new ArrayList<>();
    for (int i = 0; i < chart.getElementsByTagName(name).getLength(); i++) {
      elements.add((Element) chart.getElementsByTagName(name).item(i));
    }
    return elements;
  }

  @Test
  void it_says_in_words_what_it_shows() throws Exception {
    Document chart = chart(map("formulas", List.of(cream()), "finishAt", "2026-05-01T09:00"));
    assertThat(chart.getDocumentElement().getAttribute("role")).isEqualTo("img");
    assertThat(all(chart, "title").get(0).getTextContent())
        .isEqualTo("Plan: Fri 1.5. 08:38 to Fri 1.5. 09:00");
    assertThat(all(chart, "desc").get(0).getTextContent())
        .startsWith("22 min, 3 steps. 08:38–08:50 syrup · cream.");
  }

  @Test
  void every_step_has_a_bar_that_lies_on_the_paper() throws Exception {
    List<Map<String, Object>> stages = new ArrayList<>();
    for (int i = 0; i < 30; i++) {
      String title = "A step with a very long name, so long that it does not fit at all: " + i;
      stages.add(with(stage("s" + i, i % 2 == 0 ? "bench" : "oven", 48, false), "title", title));
    }
    Document chart =
        chart(map("formulas", List.of(formula("long", stages)), "startAt", "2026-05-01T09:00"));
    assertThat(all(chart, "g")).hasSize(30);
    for (Element group : all(chart, "g")) {
      Element bar = (Element) group.getElementsByTagName("rect").item(0);
      double x = Double.parseDouble(bar.getAttribute("x"));
      double width = Double.parseDouble(bar.getAttribute("width"));
      assertThat(x).isBetween(0.0, 560.0);
      assertThat(x + width).isBetween(x + 2.9, 560.0);
    }
  }

  @Test
  void a_long_rest_is_drawn_short_so_that_handwork_can_be_seen() throws Exception {
    List<Map<String, Object>> stages =
        List.of(
            stage("mix", "mixer", 20, true),
            stage("rise", "bench", 720, false, "after", List.of("mix")),
            stage("shape", "bench", 20, true, "after", List.of("rise")));
    Document chart =
        chart(map("formulas", List.of(formula("dough", stages)), "startAt", "2026-05-01T20:00"));
    Element mix = (Element) all(chart, "g").get(0).getElementsByTagName("rect").item(0);
    assertThat(Double.parseDouble(mix.getAttribute("width"))).isGreaterThan(100);
    assertThat(all(chart, "text"))
        .extracting(Element::getTextContent)
        .contains("12 h", "Fri 1.5.", "Sat 2.5.");
  }

  @Test
  void strange_names_do_no_harm() throws Exception {
    String name = "<script>&\"\u0000\uD83D " + "🍐".repeat(80);
    Map<String, Object> stage = with(stage("cook", "stove", 12, true), "title", name);
    Document chart =
        chart(
            map("formulas", List.of(formula("f", List.of(stage))), "startAt", "2026-05-01T20:00"));
    assertThat(all(chart, "script")).isEmpty();
  }

  @Test
  void without_times_minutes_are_shown() throws Exception {
    Document chart = chart(map("activities", List.of(map("id", "A", "minutes", 4))));
    assertThat(all(chart, "title").get(0).getTextContent()).isEqualTo("Plan of 4 min");
  }
}
