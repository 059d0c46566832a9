package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.pan.Coat;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** How much to make; exactly one way of saying it. */
@ExactlyOne({
  "factor",
  "mass",
  "portions",
  "pieces+pieceMass",
  "flour",
  "pans",
  "coat",
  "line",
  "stock"
})
public record To(
    @Described(
            value = "So many times the formula as written",
            moreThan = "0",
            atMost = "1000000",
            example = "2.5")
        @Nullable Double factor,
    @Described(
            value = "Raw mass after make-up, or finished mass with basis baked",
            moreThan = "0 g",
            example = "3 kg")
        @Nullable Mass mass,
    @Described(value = "So many portions", moreThan = "0", atMost = "10000000", example = "40")
        @Nullable Double portions,
    @Described(value = "So many pieces", moreThan = "0", atMost = "10000000", example = "60")
        @Nullable Double pieces,
    @Described(
            value = "Raw mass of one piece, or finished mass with basis baked",
            moreThan = "0 g",
            example = "400 g")
        @Nullable Mass pieceMass,
    @Described(value = "Total flour", moreThan = "0 g", example = "5 lb") @Nullable Mass flour,
    @Described(value = "Pans to fill", optional = true, fewest = 1, most = 200) List<PanCount> pans,
    @Described("A cake to fill and to coat with the finished product") @Nullable Coat coat,
    @Described("One ingredient fixes the batch") @Nullable FixedLine line,
    @Described(
            value = "What is on hand; the largest batch it allows",
            optional = true,
            fewest = 1,
            most = 500)
        List<StockItem> stock,
    @Described("What a mass here is: raw, as it is scaled, or baked; raw unless told")
        @Nullable Basis basis) {

  /** At which moment a mass is meant. */
  public enum Basis {
    RAW,
    BAKED
  }

  public To {
    boolean saysMass =
        mass != null || pieceMass != null || pans.stream().anyMatch(pan -> pan.mass() != null);
    if (basis != null && !saysMass) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "/basis",
          "`basis` says what `mass` and `pieceMass` are; neither is given");
    }
  }

  /** So many times the formula as written. */
  public static To ofFactor(double factor) {
    return of(factor, null, null);
  }

  /** A raw mass after make-up. */
  public static To ofMass(Mass mass) {
    return of(null, mass, null);
  }

  /** So much flour in all. */
  public static To ofFlour(Mass flour) {
    return of(null, null, flour);
  }

  private static To of(@Nullable Double factor, @Nullable Mass mass, @Nullable Mass flour) {
    return new To(factor, mass, null, null, null, flour, List.of(), null, null, List.of(), null);
  }

  /** Whether masses are those of the finished product. */
  public boolean isBaked() {
    return basis == Basis.BAKED;
  }
}
