package tamis.api.representation;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.Test;

class CatalogueTest {
  @Test
  void each_calculation_is_told_with_schemas_and_examples() {
    byte[] bytes = Catalogue.bytes(List.of(new Offered("scale", new Weighing())), Set.of());
    Map<?, ?> catalogue = (Map<?, ?>) StrictJson.tree(bytes, new JsonLimits(100, 40));
    Map<?, ?> item = (Map<?, ?>) ((List<?>) catalogue.get("items")).get(0);

    assertThat(item.get("name")).isEqualTo("weighing");
    assertThat(item.get("title")).isEqualTo("What a formula weighs.");
    assertThat(item.get("plugin")).isEqualTo("scale");
    assertThat(item.get("switchedOff")).isEqualTo(false);
    assertThat(item.get("formats")).isEqualTo(List.of("json", "csv", "text", "svg"));
    assertThat(properties(item, "input")).contains("mass", "to");
    assertThat(properties(item, "result")).contains("factor", "lines", "bill");
    assertThat(item.get("examples").toString()).contains("mass=3000 g");
    Map<?, ?> schemas = (Map<?, ?>) ((Map<?, ?>) catalogue.get("components")).get("schemas");
    assertThat(names(schemas)).contains("To", "Formula", "PanRef");
  }

  @Test
  void a_calculation_that_is_called_no_more_is_told_so() {
    var offered = List.of(new Offered("scale", new Weighing()));
    byte[] bytes = Catalogue.bytes(offered, Set.of("weighing"));
    Map<?, ?> catalogue = (Map<?, ?>) StrictJson.tree(bytes, new JsonLimits(100, 40));
    Map<?, ?> item = (Map<?, ?>) ((List<?>) catalogue.get("items")).get(0);
    assertThat(item.get("switchedOff")).isEqualTo(true);
  }

  private static List<String> properties(Map<?, ?> item, String of) {
    return names((Map<?, ?>) ((Map<?, ?>) item.get(of)).get("properties"));
  }

  private static List<String> names(Map<?, ?> map) {
    return map.keySet().stream().map(String::valueOf).toList();
  }
}
