package tamis.plugin.pans;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.StringReader;
import java.util.ArrayList;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;
import org.w3c.dom.NodeList;
import org.xml.sax.InputSource;
import tamis.engine.pan.CakeShape;
import tamis.engine.pan.Coat;
import tamis.engine.quantity.Length;

class CakeSectionTest {
  private static final String SPONGE = "layer";
  private static final String CREAM = "cream";

  @Test
  void layers_and_cream_are_drawn_to_scale() throws Exception {
    CakeShape cake =
        new CakeShape(CakeShape.Shape.ROUND, cm(20), null, null, null, 3, cm(3), null, cm(2));
    Document svg = drawing(new Coat(cake, cm(0.6), cm(0.8), cm(0.5), List.of(), cm(0.2), null));
    List<Element> layers = boxes(svg, SPONGE);
    assertThat(layers).hasSize(3);
    double scale = number(layers.get(0), "width") / 20;
    assertThat(number(layers.get(1), "width") / scale).as("trimmed").isEqualTo(16, within(0.01));
    assertThat(number(layers.get(0), "height") / scale).isEqualTo(3, within(0.01));
    Element cream = boxes(svg, CREAM).get(0);
    assertThat(number(cream, "width") / scale).isEqualTo(22, within(0.01));
    assertThat(number(cream, "height") / scale).isEqualTo(10.8, within(0.01));
    double gap =
        number(layers.get(0), "y") - number(layers.get(1), "y") - number(layers.get(1), "height");
    assertThat(gap / scale).isEqualTo(0.5, within(0.01));
    assertThat(svg.getDocumentElement().getTextContent()).contains("22 cm", "10.8 cm");
    assertThat(svg.getElementsByTagName("title").item(0).getTextContent()).isNotBlank();
  }

  @Test
  void a_higher_tier_stands_on_the_one_below_and_all_stays_within_the_frame() throws Exception {
    List<CakeShape> tiers = new ArrayList<>();
    for (double diameter : List.of(30.0, 24.0, 18.0, 12.0)) {
      tiers.add(CakeShape.round(cm(diameter), 2, cm(6)));
    }
    Document svg = drawing(new Coat(null, cm(1), cm(1), cm(1), tiers, null, null));
    List<Element> coats = boxes(svg, CREAM);
    assertThat(coats).hasSize(4);
    for (int i = 1; i < coats.size(); i++) {
      assertThat(number(coats.get(i), "y") + number(coats.get(i), "height"))
          .isEqualTo(number(coats.get(i - 1), "y"), within(0.05));
    }
    String[] frame = svg.getDocumentElement().getAttribute("viewBox").split(" ");
    assertThat(number(coats.get(3), "y")).isBetween(0.0, Double.parseDouble(frame[3]));
    assertThat(number(coats.get(0), "x") + number(coats.get(0), "width"))
        .isLessThan(Double.parseDouble(frame[2]));
  }

  private static Document drawing(Coat coat) throws Exception {
    List<CoatedTier> tiers = coat.cakes().stream().map(cake -> CoatedTier.of(cake, coat)).toList();
    double height = tiers.stream().mapToDouble(CoatedTier::finishedHeightCm).sum();
    double width = tiers.get(0).finishedWidthCm();
    Coating.Result result =
        new Coating.Result(coat.volumes(), null, null, height, width, tiers, null);
    return DocumentBuilderFactory.newInstance()
        .newDocumentBuilder()
        .parse(new InputSource(new StringReader(new CakeSection(result).svg())));
  }

  private static List<Element> boxes(Document svg, String what) {
    List<Element> boxes = new ArrayList<>();
    NodeList all = svg.getElementsByTagName("rect");
    for (int i = 0; i < all.getLength(); i++) {
      if (((Element) all.item(i)).getAttribute("class").equals(what)) {
        boxes.add((Element) all.item(i));
      }
    }
    return boxes;
  }

  private static double number(Element box, String name) {
    return Double.parseDouble(box.getAttribute(name));
  }

  private static Length cm(double centimetres) {
    return Length.ofCentimetres(centimetres);
  }
}
