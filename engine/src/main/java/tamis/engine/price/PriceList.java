package tamis.engine.price;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.record.Described;

/** All prices of a shop; replaced as a whole. An item has one price. */
public record PriceList(
    @Described(value = "Purchase packs, one an item", optional = true, most = 20_000, table = true)
        List<Price> prices) {

  public PriceList {
    Faults faults = new Faults();
    Map<String, Integer> seen = new HashMap<>();
    for (int i = 0; i < prices.size(); i++) {
      Price price = prices.get(i);
      @Nullable Integer earlier = seen.putIfAbsent(price.ingredient(), i);
      if (earlier != null) {
        faults.add(
            new Fault(
                FaultCode.DUPLICATE,
                "/prices/" + i + "/ingredient",
                price.ingredient(),
                null,
                "`" + price.ingredient() + "` has a price in entry " + earlier + " too"));
      }
      if (price.price().amount().signum() < 0) {
        faults.add(
            FaultCode.OUT_OF_BOUNDS,
            "/prices/" + i + "/price",
            "a price must be nothing or more, was " + price.price());
      }
      if (!price.pack().isMeasured() || price.pack().low() <= 0) {
        faults.add(
            FaultCode.OUT_OF_BOUNDS,
            "/prices/" + i + "/pack",
            "a pack needs a size of more than nothing, for example 5 kg, was " + price.pack());
      }
    }
    faults.refuseIfAny();
  }

  public static PriceList empty() {
    return new PriceList(List.of());
  }
}
