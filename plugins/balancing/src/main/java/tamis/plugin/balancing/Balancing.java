package tamis.plugin.balancing;

import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.price.Price;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Money;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * A mix of ingredients whose figures lie within bounds, or as near to targets as they can: the
 * cheapest, or the one with the least or most of something. Properties add up by mass, so that it
 * is a linear programme (Dantzig 1951; solved by the simplex method). What stops it is told with
 * what relaxing it would give; what cannot be met is refused with a smallest set of bounds that
 * exclude each other.
 */
public final class Balancing implements Calculation<Balancing.Input, Balancing.Result> {

  /** What may go in and what it must come to. */
  public record Input(
      @Described(value = "What may go into the mix", fewest = 1, most = 1_000)
          List<MixItem> ingredients,
      @Described(
              value = "Mass of the mix; 1 kg if left out, or free if a bound is of the whole mix",
              moreThan = "0 g",
              example = "1 kg")
          @Nullable Mass mass,
      @Described(value = "What the mix must come to", optional = true, most = 60)
          List<MixBound> bounds,
      @Described(value = "Most that a kilogram may cost", example = "4.40 EUR")
          @Nullable Money costAtMost,
      @Described("What is sought; nearest if there are targets, else least-cost, if left out")
          @Nullable Aim aim,
      @Described(
              value = "The property that is to be least or most",
              example = "sweetness",
              most = 80)
          @Nullable String of,
      @Described(value = "Prices that go before the shop's own", optional = true, most = 1_000)
          List<Price> prices) {
    public Input {
      Faults faults = new Faults();
      Set<String> seen = new HashSet<>();
      boolean targets = false;
      for (int i = 0; i < bounds.size(); i++) {
        MixBound bound = bounds.get(i);
        targets |= bound.target() != null;
        if (!seen.add(bound.property() + " " + bound.isWhole())) {
          faults.add(
              new Fault(
                  FaultCode.DUPLICATE,
                  "/bounds/" + i + "/property",
                  bound.property(),
                  null,
                  "`" + bound.property() + "` is bound twice"));
        }
      }
      aims(aim, of, targets, faults);
      if (costAtMost != null && costAtMost.amount().signum() < 0) {
        faults.add(
            FaultCode.OUT_OF_BOUNDS, "/costAtMost", "a cost is not negative, was " + costAtMost);
      }
      faults.refuseIfAny();
    }

    private static void aims(
        @Nullable Aim aim, @Nullable String of, boolean targets, Faults faults) {
      boolean extreme = aim == Aim.LEAST || aim == Aim.MOST;
      if (extreme && of == null) {
        faults.add(
            FaultCode.MISSING,
            "/of",
            "say in `of` what is to be " + (aim == Aim.LEAST ? "least" : "most"));
      }
      if (!extreme && of != null) {
        faults.add(FaultCode.INCONSISTENT, "/of", "`of` goes with aim least or most");
      }
      if (aim == Aim.NEAREST && !targets) {
        faults.add(FaultCode.MISSING, "/bounds", "aim nearest needs a bound with a `target`");
      }
      if (aim != null && aim != Aim.NEAREST && targets) {
        faults.add(FaultCode.INCONSISTENT, "/aim", "a `target` goes with aim nearest");
      }
    }

    Aim aimed() {
      if (aim != null) {
        return aim;
      }
      boolean targets = bounds.stream().anyMatch(bound -> bound.target() != null);
      return targets ? Aim.NEAREST : Aim.LEAST_COST;
    }
  }

  /** What is sought. */
  public enum Aim {
    /** The cheapest mix. */
    LEAST_COST,
    /** The least sum of weighted distances from targets; of mixes alike the cheapest, if priced. */
    NEAREST,
    /** The least of a property. */
    LEAST,
    /** The most of a property. */
    MOST
  }

  /** The mix. */
  public record Result(
      @Described("What was sought") Aim aim,
      @Described("What is least or most, in words") String objective,
      @Described(value = "Its value, in the unit told beside it", headline = true) double value,
      @Described("Unit of the value") String unit,
      @Described(value = "Mass of the mix", unit = "g") double grams,
      @Described(value = "What goes in", table = true) List<MixLine> lines,
      @Described("What the mix comes to") List<MixFigure> properties,
      @Described("Cost of the mix; left out if a price is missing") @Nullable Money cost,
      @Described("Cost of a kilogram; left out if a price is missing")
          @Nullable Money costPerKilogram,
      @Described("Bounds that stop it, with what relaxing each would give, the strongest first")
          List<BindingBound> binding) {}

  @Override
  public String name() {
    return "balancing";
  }

  @Override
  public String title() {
    return "A mix whose figures lie within bounds, and what stops a better one";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    MixBound fat = new MixBound("fat", 8.0, 10.0, null, null, null);
    MixBound solids = new MixBound("solids", 36.0, 40.0, null, null, null);
    MixBound milk = new MixBound("milk-solids-not-fat", 9.0, 11.0, null, null, null);
    List<MixItem> priced =
        List.of(
            item("milk-whole", "0.95 EUR"),
            item("cream-heavy", "5.20 EUR"),
            item("milk-powder-skim", "6.40 EUR"),
            item("sugar-granulated", "1.10 EUR"),
            item("dextrose", "2.30 EUR"));
    MixBound sweet = new MixBound("sweetness", null, null, 16.0, null, null);
    MixBound near = new MixBound("solids", 36.0, 40.0, 38.0, null, null);
    return List.of(
        new Input(
            priced,
            Mass.ofKilograms(5),
            List.of(fat, solids, milk, new MixBound("sweetness", 15.0, 18.0, null, null, null)),
            null,
            null,
            null,
            List.of()),
        new Input(
            priced,
            Mass.ofKilograms(1),
            List.of(fat, near, sweet),
            null,
            Aim.NEAREST,
            null,
            List.of()),
        new Input(
            List.of(item("cream-heavy", null), item("milk-skim", null)),
            Mass.ofKilograms(10),
            List.of(new MixBound("fat", 18.0, 18.0, null, null, null)),
            null,
            Aim.MOST,
            "protein",
            List.of()));
  }

  private static MixItem item(String ingredient, @Nullable String price) {
    return new MixItem(
        IngredientRef.parse(ingredient),
        null,
        Map.of(),
        price == null ? null : Money.parse(price),
        null,
        null,
        null,
        null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    return new Balance(input, kitchen).answer();
  }
}
