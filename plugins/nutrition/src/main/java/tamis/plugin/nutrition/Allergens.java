package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Contents;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * The allergens that the ingredients of a formula contain and may contain, as a regime names them,
 * with the way each came in by. What is not found here is not said to be absent: cross-contact is
 * not known.
 */
public final class Allergens implements Calculation<Allergens.Input, Allergens.Result> {

  /** Of which formula, and by whose list. */
  public record Input(
      @Described(value = "Id, id@revision, or the whole document", example = "pastry-cream")
          FormulaRef formula,
      @Described("How much to make; allergens do not depend on it, but its faults are told")
          @Nullable To to,
      @Described(value = "Whose list of allergens is meant", example = "EU")
          AllergenRegime regime) {}

  /** What to declare. */
  public record Result(
      @Described("Whose list it is") AllergenRegime regime,
      @Described(value = "What the ingredients contain", table = true) List<NamedAllergen> contains,
      @Described("What the ingredients' documents say they may contain, and none contains")
          List<NamedAllergen> mayContain,
      @Described("Allergens of the documents that this regime does not name") List<Other> others,
      @Described("What need not be named, and why") List<Exempt> exempt,
      @Described("A sentence to print; how the regime wants it emphasised is its own matter")
          String statement,
      @Described("A sentence on cross-contact as the ingredients' documents tell it")
          String mayContainStatement) {}

  /** An allergen that the regime does not name. */
  public record Other(
      @Described(value = "Group, as in ingredient documents", example = "buckwheat")
          String allergen,
      @Described("Species it comes from, if it is known") @Nullable String species,
      @Described("Ways by which it came in") List<String> via) {}

  /** An allergen that need not be named. */
  public record Exempt(
      @Described(value = "Group, as in ingredient documents", example = "cereal-gluten")
          String allergen,
      @Described("Species it comes from, if it is known") @Nullable String species,
      @Described("The ingredient that is exempt") String ingredient,
      @Described("Why") String reason) {}

  @Override
  public String name() {
    return "allergens";
  }

  @Override
  public String title() {
    return "The allergens of a formula as a regime names them, and how they came in";
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
    return List.of(
        new Input(Examples.scones(), null, AllergenRegime.EUROPEAN_UNION),
        new Input(Examples.scones(), null, AllergenRegime.UNITED_STATES));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Batch batch = Baked.batch(kitchen, input.formula(), input.to(), notes);
    Contents contents = Contents.of(batch);
    AllergenDeclaration found = AllergenDeclaration.of(contents, input.regime(), notes);
    List<NamedAllergen> contains = found.contains();
    List<NamedAllergen> mayContain = found.mayContain();
    notes.cite(AllergenRules.wording(input.regime()), "/statement");
    Cautions.of("allergens", notes);
    return Answer.of(
        new Result(
            input.regime(),
            contains,
            mayContain,
            found.others(),
            found.exempt(),
            statement(input.regime(), contains),
            mayContainStatement(mayContain)),
        notes);
  }

  /** {@code Contains: wheat, milk, almond.} */
  static String statement(AllergenRegime regime, List<NamedAllergen> contains) {
    if (contains.isEmpty()) {
      return "The documents of these ingredients name no allergen of the "
          + regime
          + " list; cross-contact is not known.";
    }
    return AllergenRules.wording(regime).text("statement").stripTrailing()
        + " "
        + String.join(", ", words(contains))
        + ".";
  }

  static String mayContainStatement(List<NamedAllergen> mayContain) {
    return mayContain.isEmpty()
        ? "The ingredients' documents tell of no cross-contact; that of this bakery is not known."
        : "May contain: " + String.join(", ", words(mayContain)) + ".";
  }

  private static List<String> words(List<NamedAllergen> allergens) {
    Set<String> words = new LinkedHashSet<>();
    for (NamedAllergen one : allergens) {
      boolean said = one.species() == null || one.name().contains(one.species());
      boolean wheat = one.name().equals("wheat");
      words.add(said || wheat ? one.name() : one.name() + " (" + one.species() + ")");
    }
    return new ArrayList<>(words);
  }
}
