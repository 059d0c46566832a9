package tamis.plugin.orders;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.pan.PanRef;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/**
 * How much of one batch something takes. Entries of one station are machines to choose from; each
 * binds the formulas that have a stage at that station, and those that name no stages.
 */
@ExactlyOne({"station", "pan"})
public record Capacity(
    @Described(value = "Station, as the stages write it", example = "mixer", most = 60)
        @Nullable String station,
    @Described(value = "Which machine of it", example = "20 l bowl", most = 60)
        @Nullable String name,
    @Described(value = "Least that it works on", moreThan = "0 g", example = "1.5 kg")
        @Nullable Mass least,
    @Described(value = "Most that goes in", moreThan = "0 g", example = "12 kg")
        @Nullable Mass most,
    @Described(value = "Most pieces that go in", atLeast = "1", atMost = "1000000", example = "60")
        @Nullable Double pieces,
    @Described(value = "Pan that there are so many of, as the yield names it") @Nullable PanRef pan,
    @Described(value = "How many of that pan", atLeast = "1", atMost = "100000", example = "12")
        @Nullable Integer count) {

  public Capacity {
    Faults faults = new Faults();
    if (station != null && most == null && pieces == null) {
      faults.add(
          FaultCode.MISSING,
          "/most",
          "a station needs `most`, the mass, or `pieces` that it takes");
    }
    if ((pan == null) != (count == null)) {
      faults.add(
          pan == null ? FaultCode.INCONSISTENT : FaultCode.MISSING,
          "/count",
          pan == null ? "`count` is of a `pan`" : "a `pan` needs its `count`");
    }
    if (pan != null && (least != null || most != null || pieces != null)) {
      faults.add(
          FaultCode.INCONSISTENT, "/pan", "a pan has a `count`, not `least`, `most` or `pieces`");
    }
    if (least != null && most != null && least.compareTo(most) > 0) {
      faults.add(
          new Fault(
              FaultCode.OUT_OF_BOUNDS,
              "/least",
              least.toString(),
              "at most " + most,
              "`least` must not be more than `most`: " + least + " and " + most));
    }
    faults.refuseIfAny();
  }

  String words() {
    return name == null ? String.valueOf(station) : name;
  }
}
