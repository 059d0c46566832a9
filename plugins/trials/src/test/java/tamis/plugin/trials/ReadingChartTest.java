package tamis.plugin.trials;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.spi.Kitchen;

class ReadingChartTest {
  private static String svg(Book book) {
    Kitchen kitchen = book.kitchen(new StandIns(new StandIns.Check()));
    var input =
        new RecordReader((References) kitchen, Limits.usual())
            .read(TrialComparison.Input.class, Map.of("trials", List.copyOf(book.trialIds())));
    var calculation = new TrialComparison();
    return calculation
        .renderings()
        .get("image/svg+xml")
        .apply(calculation.calculate(input, kitchen));
  }

  private static Document parsed(String svg) throws Exception {
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(svg)));
  }

  @Test
  void each_reading_is_a_mark_and_each_trial_is_named_in_each_panel() throws Exception {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "temper 19; syrup 104 118")
            .trial("b", "cream@1", "discarded", "temper 12; syrup 111");
    Document drawing = parsed(svg(book));
    // five readings and two marks in the legend
    assertThat(drawing.getElementsByTagName("path").getLength()).isEqualTo(7);
    NodeList texts = drawing.getElementsByTagName("text");
    int named = 0;
    for (int i = 0; i < texts.getLength(); i++) {
      named += texts.item(i).getTextContent().equals("b") ? 1 : 0;
    }
    assertThat(named).as("at the end of its line in both panels").isEqualTo(2);
    assertThat(svg(book)).contains("window 18 to 21 °C", "window 116 to 121 °C", "b, discarded");
  }

  @Test
  void marks_differ_without_their_colour() {
    Set<String> seen = new HashSet<>();
    for (int i = 0; i < 12; i++) {
      TrialMark mark = new TrialMark(i);
      seen.add(mark.path(0, 0) + mark.dashes() + mark.filled());
    }
    assertThat(seen).hasSize(12);
  }

  @Test
  void what_a_document_says_stays_text() throws Exception {
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "", "observations", List.of(bad("10 °C")))
            .trial("b", "cream@1", "kept", "", "observations", List.of(bad("12 °C")));
    String svg = svg(book);
    assertThat(svg).doesNotContain("<script");
    parsed(svg);
  }

  private static Map<String, Object> bad(String value) {
    return Book.map(
        "id",
        "1",
        "stage",
        "</text><script>&\u0007\uD800",
        "at",
        "2026-04-11T09:00",
        "measure",
        "temperature",
        "value",
        value);
  }

  @Test
  void no_reading_or_one_alone_is_drawn_as_well() throws Exception {
    Book none = Book.ofCream().trial("a", "cream@1", "kept", "").trial("b", "cream@1", "kept", "");
    assertThat(parsed(svg(none)).getElementsByTagName("path").getLength()).isEqualTo(2);
    Book one =
        Book.ofCream().trial("a", "cream@1", "kept", "rest 0").trial("b", "cream@1", "kept", "");
    assertThat(svg(one)).doesNotContain("NaN").doesNotContain("Infinity");
    parsed(svg(one));
  }

  @Test
  void ticks_are_round_and_hold_both_ends() {
    assertThat(Ticks.of(0, 70).values()).containsExactly(0.0, 20.0, 40.0, 60.0, 80.0);
    assertThat(Ticks.of(0.41, 0.58).low()).isEqualTo(0.4, within(1e-9));
    assertThat(Ticks.of(0.41, 0.58).high()).isEqualTo(0.6, within(1e-9));
    Ticks alone = Ticks.of(5, 5);
    assertThat(alone.low()).isLessThan(5);
    assertThat(alone.high()).isGreaterThan(5);
  }

  @Test
  void long_series_are_thinned_for_the_drawing_only() {
    List<Object> many = new java.util.ArrayList<>();
    for (int i = 0; i < 5_000; i++) {
      String at = String.format("2026-04-11T%02d:%02d:%02d", 8 + i / 3600, i / 60 % 60, i % 60);
      many.add(
          Book.map(
              "id",
              "o" + i,
              "stage",
              "temper",
              "at",
              at,
              "measure",
              "temperature",
              "value",
              (i == 2_501 ? "2" : "19") + " °C"));
    }
    Book book =
        Book.ofCream()
            .trial("a", "cream@1", "kept", "", "observations", many)
            .trial("b", "cream@1", "kept", "temper 19");
    Kitchen kitchen = book.kitchen(new StandIns(new StandIns.Check()));
    var result =
        new TrialComparison()
            .calculate(
                new RecordReader((References) kitchen, Limits.usual())
                    .read(TrialComparison.Input.class, Map.of("trials", List.of("a", "b"))),
                kitchen)
            .result();
    assertThat(result.readings()).hasSize(201);
    assertThat(result.differences().get(0).values().get(0).value())
        .as("the coldest is found among all")
        .isEqualTo(2);
  }
}
