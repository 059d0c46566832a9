package tamis.plugin.balancing;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.record.RecordReader;

/** One ingredient that may go into the mix. */
@ExactlyOne({"ingredient", "name"})
public record MixItem(
    @Described(value = "Id or name of an ingredient", example = "milk-whole")
        @Nullable IngredientRef ingredient,
    @Described(
            value = "Name of something whose composition is given here",
            example = "base 12",
            most = 200)
        @Nullable String name,
    @Described(
            value =
                "Composition of 100 g by property; goes before what the tables say. Names of one's"
                    + " own are allowed if every ingredient has them",
            optional = true)
        Map<String, Double> composition,
    @Described(value = "Price of a kilogram; goes before other prices", example = "4.40 EUR")
        @Nullable Money pricePerKilogram,
    @Described(value = "Least that goes in", example = "50 g") @Nullable Mass low,
    @Described(value = "Most that goes in", example = "600 g") @Nullable Mass high,
    @Described(value = "Least, in percent of the mix", unit = "%", atLeast = "0", atMost = "100")
        @Nullable Double lowPercent,
    @Described(value = "Most, in percent of the mix", unit = "%", atLeast = "0", atMost = "100")
        @Nullable Double highPercent) {
  private static final double MOST = 1e9;

  public MixItem {
    Faults faults = new Faults();
    if (name != null && name.isBlank()) {
      faults.add(FaultCode.MISSING, "/name", "a name has letters");
    }
    composition.forEach(
        (property, value) -> {
          if (!(value >= 0 && value <= MOST)) {
            faults.add(
                new Fault(
                    FaultCode.OUT_OF_BOUNDS,
                    "/composition/" + RecordReader.escaped(property),
                    value.toString(),
                    "0 to 1e9",
                    "100 g hold 0 to 1e9 of `" + property + "`, was " + value));
          }
        });
    if (pricePerKilogram != null && pricePerKilogram.amount().signum() < 0) {
      faults.add(
          FaultCode.OUT_OF_BOUNDS,
          "/pricePerKilogram",
          "a price is not negative, was " + pricePerKilogram);
    }
    if ((low != null && lowPercent != null) || (high != null && highPercent != null)) {
      faults.add(FaultCode.INCONSISTENT, "", "a bound is a mass or a percentage, not both");
    }
    if (low != null && high != null && low.grams() > high.grams()) {
      faults.add(FaultCode.INCONSISTENT, "/low", "low is above high: " + low + ", " + high);
    }
    if (lowPercent != null && highPercent != null && lowPercent > highPercent) {
      faults.add(
          FaultCode.INCONSISTENT,
          "/lowPercent",
          "low is above high: "
              + Words.number(lowPercent)
              + " %, "
              + Words.number(highPercent)
              + " %");
    }
    faults.refuseIfAny();
  }
}
