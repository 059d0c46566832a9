package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.FormulaRef;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientTables;
import tamis.engine.ingredient.ReferenceIngredients;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.plugin.nutrition.Nutrition.Gap;

/** The label of one formula. */
final class LabelOf {
  private static final double HUNDRED = 100;

  private final Nutrition.Input input;
  private final Notes notes;
  private final Label label;
  private final Batch batch;
  private final Baked baked;
  private final NutrientSum sum;
  private final List<String> incomplete = new ArrayList<>();

  LabelOf(Nutrition.Input input, FormulaRef formula, Kitchen kitchen, Notes notes) {
    this.input = input;
    this.notes = notes;
    this.label = new Label(input.regime());
    this.batch = Baked.batch(kitchen, formula, input.to(), notes);
    this.baked = Baked.of(batch, input.loss());
    this.sum = sum(input, baked, notes);
  }

  static NutrientSum sum(Nutrition.Input input, Baked baked, Notes notes) {
    Retained retained = new Retained(input.cooking(), input.alcohol(), input.retention(), notes);
    boolean specific =
        input.regime().isAmerican() && input.energy() == Nutrition.EnergyWay.SPECIFIC;
    LabelFacts facts = new LabelFacts(input.regime(), specific, retained);
    return NutrientSum.of(baked, facts, input.loss() == null ? "/formula" : "/loss");
  }

  Nutrition.Result result() {
    Portions portions = Portions.of(input, batch, baked, notes);
    @Nullable Double portion = portions.grams();
    boolean american = input.regime().isAmerican();
    double of = american && portion != null ? portion : HUNDRED;
    if (american && portion == null) {
      notes.remark(
          "no-serving",
          "/portion",
          "a US label is of a serving; give `portion`, `category` or the portions of the formula. Figures are of 100 g");
    }
    Map<LabelFigure, Declared> declared = declared(of, "/declared/");
    Map<LabelFigure, Declared> ofPortion =
        american || portion == null ? Map.of() : declared(portion, "/declaredPerPortion/");
    List<Gap> gaps = gaps(declared);
    cite();
    markIncomplete(portion != null);
    return new Nutrition.Result(
        input.regime(),
        baked.grams(),
        portion,
        portion == null ? null : (Double) (baked.grams() / portion),
        portions.serving(),
        sum.figures(HUNDRED),
        portion == null ? null : sum.figures(portion),
        sum.figures(baked.grams()),
        american && portion != null ? "a serving of " + Rounded.plain(of, 1) + " g" : "100 g",
        declared,
        ofPortion,
        LabelLines.of(label, declared, ofPortion, true),
        known(),
        gaps,
        List.copyOf(incomplete));
  }

  private Map<LabelFigure, Declared> declared(double grams, String at) {
    Map<LabelFigure, Declared> declared = new EnumMap<>(LabelFigure.class);
    for (LabelFigure figure : label.figures()) {
      @Nullable Row rule = label.rule(figure);
      @Nullable Double value = sum.in(grams, figure);
      if (rule == null || value == null) {
        continue;
      }
      double most = sum.known(figure) == 1 ? value : sum.mostIn(grams, figure);
      Declared one = label.declared(rule, value, most, notes, at + figure);
      declared.put(figure, one);
      if (!one.complete()) {
        incomplete.add(at + figure);
      }
    }
    return declared;
  }

  private List<Gap> gaps(Map<LabelFigure, Declared> declared) {
    List<Gap> gaps = new ArrayList<>();
    for (LabelFigure figure : label.figures()) {
      @Nullable Declared one = declared.get(figure);
      if (label.isMandatory(figure) && (one == null || !one.complete())) {
        gaps.add(new Gap(figure, sum.known(figure), sum.silent(figure)));
      }
    }
    if (!gaps.isEmpty()) {
      notes.estimate(
          "label-gap",
          "/formula",
          "not known in full, so the label is not complete: "
              + String.join(", ", gaps.stream().map(g -> g.figure().toString()).toList()));
    }
    return gaps;
  }

  private void markIncomplete(boolean portion) {
    for (LabelFigure figure : LabelFigure.values()) {
      if (sum.known(figure) < 1 && sum.in(HUNDRED, figure) != null) {
        mark((figure.isCommon() ? "/" : "/others/") + figure, portion);
      }
    }
    if (!sum.isTableKcalWhole() && sum.tableKcal(HUNDRED) != null) {
      mark("/tableEnergyKcal", portion);
    }
  }

  private void mark(String figure, boolean portion) {
    incomplete.add("/per100g" + figure);
    incomplete.add("/perBatch" + figure);
    if (portion) {
      incomplete.add("/perPortion" + figure);
    }
  }

  private Map<LabelFigure, Double> known() {
    Map<LabelFigure, Double> known = new EnumMap<>(LabelFigure.class);
    for (LabelFigure figure : LabelFigure.values()) {
      if (figure.isCommon() || sum.known(figure) > 0) {
        known.put(figure, sum.known(figure));
      }
    }
    return known;
  }

  private void cite() {
    batch.remarks().forEach(notes::add);
    batch
        .sources()
        .forEach(
            s -> notes.cite(s.table(), s.row(), s.source(), s.locator(), s.basis(), "/per100g"));
    for (Batch.BillRow billed : batch.bill()) {
      Ingredient ingredient = billed.ingredient();
      @Nullable Row row = IngredientTables.INGREDIENTS.row(ingredient.id());
      if (row != null && ingredient.equals(ReferenceIngredients.standard().byId(ingredient.id()))) {
        notes.cite(row, "/per100g");
      } else {
        String source =
            ingredient.source() == null ? "the ingredient's own document" : ingredient.source();
        notes.cite("ingredients", ingredient.id(), source, null, null, "/per100g");
      }
    }
    String regime = input.regime().figures();
    FigureTables.ENERGY.rows().stream()
        .filter(row -> row.text("regime").equals(regime))
        .forEach(row -> notes.cite(row, "/per100g/energyKcal"));
  }
}
