package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * The list of ingredients in descending weight at mixing (EU 1169/2011 Article 18; 21 CFR
 * 101.4(a)(1)), compound ingredients with their own lists in brackets, allergens marked, and the
 * percentages of named ingredients: weight used to finished weight (Annex VIII).
 */
public final class IngredientList
    implements Calculation<IngredientList.Input, IngredientList.Result> {

  /** Of which formula, and for whose label. */
  public record Input(
      @Described(value = "Id, id@revision, or the whole document", example = "sultana-scones")
          FormulaRef formula,
      @Described("How much to make; the list does not depend on it") @Nullable To to,
      @Described(value = "Whose label is meant", example = "EU") LabelRegime regime,
      @Described(
              value = "Ingredients that the name or the picture of the product names",
              optional = true,
              most = 50)
          List<IngredientRef> named,
      @Described(
              value = "Mass lost in baking and cooling, in place of the formula's own losses",
              lessThan = "100 %",
              example = "10 %")
          @Nullable Fraction loss,
      @Described("How sub-formulas are listed: in brackets, or dispersed among the rest")
          @Nullable Compounds compounds,
      @Described(
              value = "US: percent up to which ingredients stand after \"contains … or less of\"",
              atLeast = "0.5",
              atMost = "2",
              example = "2")
          @Nullable Double minorPercent) {}

  /** How sub-formulas are listed. */
  public enum Compounds {
    BRACKETED,
    DISPERSED
  }

  /** The list. */
  public record Result(
      @Described("Whose label it is for") LabelRegime regime,
      @Described("The list, allergens in capitals") String text,
      @Described("The same for a page: allergens in strong") String html,
      @Described(value = "The entries in the order of the list", table = true) List<Entry> entries,
      @Described("Percentages of the named ingredients") List<Quid> quid,
      @Described("The sentence on allergens that may stand below the list") String statement,
      @Described(value = "Finished mass that percentages are of", unit = "g")
          double finishedGrams) {}

  /** One entry of the list. */
  public record Entry(
      @Described("Name as printed, with its parts") String text,
      @Described("Id of the ingredient, if it is one") @Nullable String ingredient,
      @Described("Name of the sub-formula, if it is one") @Nullable String compound,
      @Described(value = "As it is used", unit = "g") double grams,
      @Described(value = "Of all that is used", unit = "%") double percent,
      @Described("Whether it stands after \"contains … or less of\"") boolean minor) {}

  /** How much of a named ingredient there is. */
  public record Quid(
      @Described("Id of the ingredient") String ingredient,
      @Described(value = "Weight used to finished weight", unit = "%") double percent,
      @Described("As printed: a whole percentage, or grams in 100 g above 100 %") String text) {}

  @Override
  public String name() {
    return "ingredient-list";
  }

  @Override
  public String title() {
    return "The list of ingredients of a formula as a label prints it";
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
    List<IngredientRef> named = List.of(IngredientRef.parse("sultana"));
    return List.of(
        new Input(Examples.scones(), null, LabelRegime.EUROPEAN_UNION, named, null, null, null),
        new Input(Examples.scones(), null, LabelRegime.UNITED_STATES, List.of(), null, null, null));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Batch batch = Baked.batch(kitchen, input.formula(), input.to(), notes);
    Baked baked = Baked.of(batch, input.loss());
    Map<String, Quid> quid = quid(input, baked, kitchen, notes);
    ListText list = new ListText(input, baked, quid, notes);
    list.write(ListNode.of(batch, input.compounds() == Compounds.DISPERSED));
    AllergenDeclaration allergens =
        AllergenDeclaration.of(baked.contents(), input.regime().allergens(), new Notes());
    Cautions.of("ingredient-list", notes);
    Cautions.of("allergens", notes);
    return Answer.of(
        new Result(
            input.regime(),
            list.text(),
            list.html(),
            list.entries(),
            List.copyOf(quid.values()),
            Allergens.statement(input.regime().allergens(), allergens.contains()),
            baked.grams()),
        notes);
  }

  private static Map<String, Quid> quid(Input input, Baked baked, Kitchen kitchen, Notes notes) {
    Map<String, Quid> quid = new LinkedHashMap<>();
    Faults faults = new Faults();
    for (int i = 0; i < input.named().size(); i++) {
      Ingredient ingredient = kitchen.ingredient(input.named().get(i));
      List<Double> used = new ArrayList<>();
      baked.contents().entries().stream()
          .filter(e -> e.line().ingredient().id().equals(ingredient.id()))
          .forEach(e -> used.add(e.grams()));
      if (used.isEmpty()) {
        faults.add(
            new Fault(
                FaultCode.NOT_ALLOWED,
                "/named/" + i,
                input.named().get(i).name(),
                "an ingredient of the formula",
                "`"
                    + ingredient.id()
                    + "` is not in the formula, so no percentage of it is known"));
      }
      double grams = used.stream().mapToDouble(Double::doubleValue).sum();
      LabelRules.cite(input.regime(), "quid", notes, "/quid/" + quid.size());
      quid.put(ingredient.id(), quid(ingredient.id(), grams / baked.grams() * 100));
    }
    faults.refuseIfAny();
    return quid;
  }

  private static Quid quid(String ingredient, double percent) {
    String text =
        percent > 100
            ? Rounded.plain(percent, 1) + " g per 100 g"
            : Rounded.plain(percent, percent < 5 ? 0.1 : 1) + " %";
    return new Quid(ingredient, percent, text);
  }
}
