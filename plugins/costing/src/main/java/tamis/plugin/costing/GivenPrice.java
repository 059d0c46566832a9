package tamis.plugin.costing;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.price.Offer;
import tamis.engine.price.Pack;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Money;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;

/** A purchase pack of the request; it goes before the shop's own price of the same item. */
public record GivenPrice(
    @Described(
            value = "Id or name of an ingredient, or name of a packaging item",
            example = "butter-unsalted",
            most = 200)
        String ingredient,
    @Described(value = "Size of the pack", example = "5 kg") Quantity pack,
    @Described(value = "Price of the pack", example = "11.95 EUR") Money price,
    @Described(
            value = "Edible part of what is bought; all of it if left out",
            unit = "%",
            moreThan = "0",
            atMost = "100",
            example = "88.5")
        @Nullable Double yieldPercent,
    @Described(
            value = "With `edible`, in place of the percentage: mass as purchased in a yield test",
            moreThan = "0 g",
            example = "5.2 kg")
        @Nullable Mass purchased,
    @Described(value = "What was left of it to use", moreThan = "0 g", example = "4.6 kg")
        @Nullable Mass edible,
    @Described(value = "Who sells it", example = "the mill", most = 200)
        @Nullable String supplier) {

  public GivenPrice {
    Faults faults = new Faults();
    if (ingredient.isBlank()) {
      faults.add(FaultCode.MISSING, "/ingredient", "a price names what it is for");
    }
    if (price.amount().signum() < 0) {
      faults.add(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "/price",
              price.toString(),
              "0 or more",
              "a price must be 0 or more, was " + price));
    }
    if (!pack.isMeasured() || pack.low() <= 0) {
      faults.add(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "/pack",
              pack.text(),
              "a size of more than nothing, for example 5 kg",
              "a pack needs a size of more than nothing, was `" + pack.text() + "`"));
    }
    yieldTest(yieldPercent, purchased, edible, faults);
    faults.refuseIfAny();
  }

  private static void yieldTest(
      @Nullable Double percent, @Nullable Mass purchased, @Nullable Mass edible, Faults faults) {
    if ((purchased == null) != (edible == null)) {
      faults.add(
          FaultCode.MISSING,
          purchased == null ? "/purchased" : "/edible",
          "a yield test has both masses, `purchased` and `edible`");
    } else if (purchased != null && edible != null) {
      if (percent != null) {
        faults.add(
            FaultCode.INCONSISTENT,
            "/yieldPercent",
            "the yield test says the yield; give it or `yieldPercent`");
      }
      if (edible.compareTo(purchased) > 0) {
        faults.add(
            new Fault(
                FaultCode.OUT_OF_BOUNDS,
                "/edible",
                edible.toString(),
                "at most " + purchased,
                "not more can be edible than was bought: " + edible + " of " + purchased));
      }
    }
  }

  /** As an offer; a yield test is divided with all its digits, not through a rounded percentage. */
  Pack offered(String pointer) {
    BigDecimal share = BigDecimal.ONE;
    if (purchased != null && edible != null) {
      share =
          BigDecimal.valueOf(edible.grams())
              .divide(BigDecimal.valueOf(purchased.grams()), Offer.DIGITS);
    } else if (yieldPercent != null) {
      share = BigDecimal.valueOf(yieldPercent).movePointLeft(2);
    }
    boolean said = yieldPercent != null || edible != null;
    return new Pack(ingredient, pack, price, share, said, supplier, Pack.Origin.REQUEST, pointer);
  }
}
