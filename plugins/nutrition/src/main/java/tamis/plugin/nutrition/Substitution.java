package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;

/**
 * What changes in allergens and figures when one formula, or one ingredient, takes the place of
 * another. An allergen that is no longer named is not said to be absent.
 */
public final class Substitution implements Calculation<Substitution.Input, Substitution.Result> {

  /** Of which formula, and what takes whose place. */
  @ExactlyOne({"instead", "swap"})
  public record Input(
      @Described(value = "The formula as it is", example = "sultana-scones") FormulaRef formula,
      @Described(value = "The formula that takes its place", example = "walnut-scones")
          @Nullable FormulaRef instead,
      @Described("The ingredient that takes another's place") @Nullable Swap swap,
      @Described(value = "Whose label is meant", example = "EU") LabelRegime regime,
      @Described(
              value = "Mass lost in baking and cooling, in place of the formulas' own losses",
              lessThan = "100 %",
              example = "10 %")
          @Nullable Fraction loss) {}

  /** What changes. */
  public record Result(
      @Described("Whose label it is") LabelRegime regime,
      @Described("Allergens that come in") List<NamedAllergen> comeIn,
      @Described("Allergens that no document names any more; not said to be absent")
          List<NamedAllergen> noLongerNamed,
      @Described("Allergens that stay") List<NamedAllergen> stay,
      @Described("Allergens that may now be contained, by the documents")
          List<NamedAllergen> mayComeIn,
      @Described(value = "Figures of 100 g of the finished product", table = true)
          List<Change> figures,
      @Described("Figures that are known in part only (JSON Pointers)") List<String> incomplete) {}

  /** A figure before and after. */
  public record Change(
      @Described("The figure") LabelFigure figure,
      @Described("Its unit") String unit,
      @Described("In 100 g as it is; left out if nothing is known") @Nullable Double before,
      @Described("In 100 g as it would be; left out if nothing is known") @Nullable Double after,
      @Described("The difference; left out unless both are known in full")
          @Nullable Double change) {}

  @Override
  public String name() {
    return "substitution";
  }

  @Override
  public String title() {
    return "What changes in allergens and figures when something takes another's place";
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
    Swap oats = new Swap(IngredientRef.parse("milk-whole"), IngredientRef.parse("milk-oat"), null);
    return List.of(new Input(Examples.scones(), null, oats, LabelRegime.EUROPEAN_UNION, null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Baked before = Baked.of(Baked.batch(kitchen, input.formula(), null, notes), input.loss());
    Baked after = after(input, before, kitchen);
    AllergenDeclaration was = allergens(before, input);
    AllergenDeclaration is = allergens(after, input);
    List<NamedAllergen> contained = was.contains();
    List<NamedAllergen> containing = is.contains();
    List<String> incomplete = new ArrayList<>();
    List<Change> figures = changes(input, before, after, notes, incomplete);
    Cautions.of("substitution", notes);
    Cautions.of("nutrition", notes);
    Cautions.of("allergens", notes);
    return Answer.of(
        new Result(
            input.regime(),
            without(containing, contained),
            without(contained, containing),
            within(containing, contained),
            without(without(is.mayContain(), was.mayContain()), contained),
            figures,
            List.copyOf(incomplete)),
        notes);
  }

  private static Baked after(Input input, Baked before, Kitchen kitchen) {
    if (input.swap() != null) {
      return input.swap().of(before, kitchen);
    }
    FormulaRef instead = input.instead() == null ? input.formula() : input.instead();
    try {
      return Baked.of(Baked.batch(kitchen, instead, null, new Notes()), input.loss());
    } catch (Refusal refusal) {
      throw moved(refusal);
    }
  }

  /** The kitchen names what it is given {@code formula}; here it is {@code instead}. */
  private static Refusal moved(Refusal refusal) {
    return new Refusal(
        refusal.faults().stream()
            .map(
                f ->
                    new Fault(
                        f.code(),
                        f.pointer().replaceFirst("^/formula", "/instead"),
                        f.given(),
                        f.allowed(),
                        f.message()))
            .toList());
  }

  private static AllergenDeclaration allergens(Baked baked, Input input) {
    return AllergenDeclaration.of(baked.contents(), input.regime().allergens(), new Notes());
  }

  private static List<NamedAllergen> without(List<NamedAllergen> all, List<NamedAllergen> others) {
    Set<String> keys = keys(others);
    return all.stream().filter(a -> !keys.contains(a.key())).toList();
  }

  private static List<NamedAllergen> within(List<NamedAllergen> all, List<NamedAllergen> others) {
    Set<String> keys = keys(others);
    return all.stream().filter(a -> keys.contains(a.key())).toList();
  }

  private static Set<String> keys(List<NamedAllergen> allergens) {
    return allergens.stream().map(NamedAllergen::key).collect(Collectors.toSet());
  }

  private static List<Change> changes(
      Input input, Baked before, Baked after, Notes notes, List<String> incomplete) {
    LabelFacts facts =
        new LabelFacts(input.regime(), false, new Retained(null, null, List.of(), notes));
    NutrientSum was = NutrientSum.of(before, facts, "/formula");
    NutrientSum is = NutrientSum.of(after, facts, input.swap() == null ? "/instead" : "/swap");
    Label label = new Label(input.regime());
    List<Change> changes = new ArrayList<>();
    for (LabelFigure figure : label.figures()) {
      @Nullable Row rule = label.rule(figure);
      @Nullable Double one = was.in(100, figure);
      @Nullable Double other = is.in(100, figure);
      if (rule == null || (one == null && other == null)) {
        continue;
      }
      String pointer = "/figures/" + changes.size();
      boolean whole = was.known(figure) == 1 && is.known(figure) == 1;
      if (!whole) {
        incomplete.add(pointer);
      }
      notes.cite(rule, pointer);
      changes.add(
          new Change(
              figure,
              rule.text("unit"),
              one,
              other,
              !whole || one == null || other == null ? null : (Double) (other - one)));
    }
    return changes;
  }
}
