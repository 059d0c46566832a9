package tamis.api;

import java.util.List;
import java.util.Map;
import java.util.ServiceLoader;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.spi.Plugin;
import tamis.plugin.scaling.Scaling;

/** The engine and a plugin as a plain library; README.md shows the region. */
final class ScalingWithoutHttp {
  private ScalingWithoutHttp() {}

  public static void main(String[] arguments) {
    // region scaling
    var plugins = ServiceLoader.load(Plugin.class).stream().map(ServiceLoader.Provider::get);
    var kitchen = new Pantry(Shelf.empty(), Pantry.Fittings.of(plugins.toList()));
    var flour = Map.of("ingredient", "bread-flour", "quantity", "2 1/4 cup");
    var water = Map.of("ingredient", "water", "quantity", "190 g");
    var salt = Map.of("ingredient", "salt", "quantity", "1 tsp");
    var loaf = Map.of("measures", "us", "lines", List.of(flour, water, salt));
    var asked = Map.of("formula", loaf, "to", Map.of("mass", "3 kg"));
    var result = (Scaling.Result) kitchen.calculate("scaling", asked).result();
    result.lines().forEach(line -> System.out.println(line.display() + " " + line.name()));
    // endregion
  }
}
