package tamis.api.representation;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import tamis.engine.spi.Calculation;

/** The list of calculations, for programs that find out what there is. */
public final class Catalogue {
  private Catalogue() {}

  /**
   * Name, title, plugin, schemas and examples of each. Schemas refer to others within the same
   * document, under {@code components}.
   *
   * @param switchedOff names of those that are called no more
   */
  public static byte[] bytes(List<Offered> offered, Set<String> switchedOff) {
    Schemas schemas = new Schemas();
    List<Object> items = new ArrayList<>();
    for (Offered one : offered) {
      CalculationPaths paths = new CalculationPaths(one, schemas);
      Calculation<?, ?> calculation = one.calculation();
      items.add(
          Tree.of(
              "name",
              calculation.name(),
              "title",
              calculation.title(),
              "plugin",
              one.plugin(),
              "switchedOff",
              switchedOff.contains(calculation.name()),
              "formats",
              Formats.of(calculation).stream().map(Format::name).toList(),
              "input",
              inline(paths.input(), schemas),
              "result",
              inline(paths.result(), schemas),
              "examples",
              calculation.examples()));
    }
    Map<String, Object> components = Tree.of("schemas", new TreeMap<>(schemas.all()));
    return ResultJson.bytes(Tree.of("items", items, "components", components));
  }

  /** The schema itself, so that names of components are seen at once. */
  private static Object inline(Map<String, Object> reference, Schemas schemas) {
    String name = String.valueOf(reference.get("$ref"));
    return schemas.all().getOrDefault(name.substring(name.lastIndexOf('/') + 1), reference);
  }
}
