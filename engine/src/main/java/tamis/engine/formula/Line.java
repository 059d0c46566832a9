package tamis.engine.formula;

import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Quantity;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;

/** One ingredient, or one sub-formula, with its quantity. */
@ExactlyOne({"ingredient", "formula"})
public record Line(
    @Described(value = "Id or any name of an ingredient", example = "egg-white")
        @Nullable IngredientRef ingredient,
    @Described(value = "A formula whose finished mass is asked for", example = "coffee-syrup")
        @Nullable FormulaRef formula,
    @Described(
            value = "How much, with its unit: 2 1/4 cup, 227 g, 3 each, 68 %, as needed",
            example = "150 g")
        Quantity quantity,
    @Described(
            value = "State in which it is measured: sifted, packed, melted …",
            example = "softened",
            most = 60)
        @Nullable String state,
    @Described(value = "Work done after measuring", example = "sifted", most = 400)
        @Nullable String preparation,
    @Described(value = "Stage at which it is added", example = "foam", most = 80)
        @Nullable String stage,
    @Described("What a formula is within this one") @Nullable Role role,
    @Described(
            value = "Part that stays in the batch; the rest is strained or boiled off",
            example = "0.4")
        @Nullable Fraction remains,
    @Described(value = "A note for the baker", most = 2_000) @Nullable String note) {

  public Line {
    if (role != null && ingredient != null) {
      throw Refusal.of(FaultCode.INCONSISTENT, "/role", "only a formula line has a role");
    }
    if (formula != null && quantity.isAsNeeded()) {
      throw Refusal.of(
          FaultCode.INCONSISTENT,
          "/quantity",
          "a formula line needs a quantity, not \"as needed\"");
    }
  }

  /**
   * An ingredient and how much of it, as they are written: {@code Line.of("milk-whole", "2 cup")}.
   *
   * @throws Refusal if they cannot be read
   */
  public static Line of(String ingredient, String quantity) {
    return new Line(
        IngredientRef.parse(ingredient),
        null,
        Quantity.parse(quantity),
        null,
        null,
        null,
        null,
        null,
        null);
  }

  /** The part that stays in the batch; all of it unless said otherwise. */
  public double remaining() {
    return remains == null ? 1 : remains.value();
  }

  /** Whether flour and water of the sub-formula count as this formula's. */
  public boolean joins() {
    return role != null && role.joins();
  }

  /** What the line names, for messages. */
  public String name() {
    if (ingredient != null) {
      return ingredient.name();
    }
    return String.valueOf(formula);
  }
}
