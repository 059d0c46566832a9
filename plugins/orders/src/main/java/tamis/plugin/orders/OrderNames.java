package tamis.plugin.orders;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Names that orders have in a list, each once; an order may have none. */
final class OrderNames {
  private OrderNames() {}

  static void check(List<@Nullable String> names, Faults faults) {
    Map<String, Integer> seen = new HashMap<>();
    for (int i = 0; i < names.size(); i++) {
      @Nullable String name = names.get(i);
      @Nullable Integer earlier = name == null ? null : seen.putIfAbsent(name, i);
      if (earlier != null) {
        faults.add(
            new Fault(
                FaultCode.DUPLICATE,
                "/orders/" + i + "/id",
                name,
                null,
                "order `" + name + "` stands in entry " + earlier + " too"));
      }
    }
  }
}
