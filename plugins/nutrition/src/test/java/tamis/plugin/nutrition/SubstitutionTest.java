package tamis.plugin.nutrition;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Remark;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.CalculationContract;
import tamis.engine.spi.Kitchen;
import tamis.engine.spi.Plugin;

class SubstitutionTest extends CalculationContract<Substitution.Input, Substitution.Result> {
  @Override
  protected Calculation<Substitution.Input, Substitution.Result> calculation() {
    return new Substitution();
  }

  @Override
  protected Plugin plugin() {
    return new NutritionPlugin();
  }

  @Override
  protected Kitchen kitchen() {
    return new Bakery()
        .with(Bakery.formula("custard", Map.of(), "milk-whole 500 g", "egg-yolk 100 g"))
        .with(Bakery.formula("flan", Map.of(), "all-purpose-flour 200 g", "=custard 300 g"))
        .with(Bakery.formula("rice-flan", Map.of(), "rice-flour 200 g", "=custard 300 g"))
        .open();
  }

  private static Map<String, Object> swap(String old, String other, double ratio) {
    return Map.of(
        "formula",
        "flan",
        "regime",
        "EU",
        "swap",
        Map.of("ingredient", old, "with", other, "ratio", ratio));
  }

  @Test
  void a_swap_reaches_into_sub_formulas() {
    Substitution.Result result = result(swap("milk-whole", "soy-milk", 1));
    assertThat(result.comeIn()).extracting(NamedAllergen::name).containsExactly("soybeans");
    assertThat(result.noLongerNamed()).extracting(NamedAllergen::name).containsExactly("milk");
    assertThat(result.stay()).extracting(NamedAllergen::name).containsExactly("wheat", "eggs");
    Substitution.Change fat = figure(result, LabelFigure.FAT);
    // 250 g of the milk are in the 500 g: 3.25 g of fat in 100 g become 1.75
    assertThat(fat.change()).isEqualTo(250 * (1.75 - 3.25) / 500, within(1e-9));
  }

  @Test
  void the_ratio_changes_the_mass() {
    Substitution.Result half = result(swap("milk-whole", "milk-whole", 0.5));
    Substitution.Change protein = figure(half, LabelFigure.PROTEIN);
    double grams = protein.before() * 5;
    assertThat(protein.after()).isEqualTo((grams - 125 * 0.0315) / 3.75, within(1e-9));
  }

  @Test
  void two_formulas_are_compared() {
    Substitution.Result result =
        result(Map.of("formula", "flan", "instead", "rice-flan", "regime", "US"));
    assertThat(result.noLongerNamed()).extracting(NamedAllergen::name).containsExactly("wheat");
    assertThat(result.comeIn()).isEmpty();
  }

  @Test
  void a_figure_without_full_knowledge_has_no_difference() {
    Substitution.Result result = result(swap("milk-whole", "milk-oat", 1));
    for (int i = 0; i < result.figures().size(); i++) {
      Substitution.Change change = result.figures().get(i);
      assertThat(change.change() == null)
          .as("%s", change.figure())
          .isEqualTo(result.incomplete().contains("/figures/" + i));
    }
    assertThat(result.incomplete()).isNotEmpty();
  }

  @Test
  void what_is_not_in_the_formula_cannot_be_swapped() {
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> result(swap("walnut", "pecan", 1)))
        .satisfies(
            refusal -> assertThat(refusal.faults().get(0).pointer()).isEqualTo("/swap/ingredient"));
  }

  @Test
  void faults_of_the_other_formula_point_to_it() {
    Map<String, Object> bad = Bakery.formula("bad", Map.of(), "salt 5 %");
    assertThatExceptionOfType(Refusal.class)
        .isThrownBy(() -> result(Map.of("formula", "flan", "instead", bad, "regime", "US")))
        .satisfies(refusal -> assertThat(refusal.faults().get(0).pointer()).startsWith("/instead"));
  }

  @Test
  void it_says_that_it_compares_on_paper() {
    assertThat(answer(read(swap("milk-whole", "milk-oat", 1))).remarks())
        .filteredOn(r -> r.kind() == Remark.Kind.CAUTION)
        .extracting(Remark::code)
        .contains("substitution-on-paper", "cross-contact-unknown", "figures-are-estimates");
  }

  private static Substitution.Change figure(Substitution.Result result, LabelFigure figure) {
    List<Substitution.Change> found =
        result.figures().stream().filter(c -> c.figure() == figure).toList();
    assertThat(found).hasSize(1);
    return found.get(0);
  }
}
