package tamis.engine.formula;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.catchThrowableOfType;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Batch.BatchLine;
import tamis.engine.formula.Batch.BillRow;
import tamis.engine.formula.Batch.ByProduct;
import tamis.engine.formula.Batch.Part;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.kitchen.Pantry;
import tamis.engine.kitchen.Shelf;
import tamis.engine.note.Remark;
import tamis.engine.record.Described;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;

/** A kitchen with the formulas of a test, asked as callers ask. */
final class Bench {
  private final List<Formula> formulas = new ArrayList<>();
  private final List<Ingredient> ingredients = new ArrayList<>();
  private Limits limits = Limits.usual();

  /** What every calculation on a batch takes. */
  public record Asked(
      @Described("The formula") FormulaRef formula, @Described("How much") @Nullable To to) {}

  static Bench with(Card... cards) {
    Bench bench = new Bench();
    for (Card card : cards) {
      bench.keep(card);
    }
    return bench;
  }

  /** Kept without looking up what it names, as a document that was kept before others changed. */
  Bench keep(Card card) {
    RecordReader reader = new RecordReader(References.UNCHECKED, limits);
    formulas.add(reader.read(Formula.class, card.tree()));
    return this;
  }

  Bench keepIngredient(Object... namesAndValues) {
    RecordReader reader = new RecordReader(References.UNCHECKED, limits);
    ingredients.add(reader.read(Ingredient.class, Card.map(namesAndValues)));
    return this;
  }

  Bench limits(Limits other) {
    limits = other;
    return this;
  }

  Pantry kitchen() {
    Pantry.Fittings usual = Pantry.Fittings.of(List.of());
    return new Pantry(
        Shelf.of(formulas, ingredients),
        new Pantry.Fittings(usual.calculations(), usual.tables(), limits, usual.calculator()));
  }

  /** The batch of a formula, by id or as a {@link Card}; {@code to} as names and values. */
  Batch batch(Object formula, Object... to) {
    Pantry kitchen = kitchen();
    Map<String, Object> tree = new LinkedHashMap<>();
    tree.put("formula", formula instanceof Card card ? card.tree() : formula);
    if (to.length > 0) {
      tree.put("to", Card.map(to));
    }
    Asked asked = new RecordReader(kitchen, limits).read(Asked.class, tree);
    return kitchen.batch(asked.formula(), asked.to());
  }

  List<Fault> faults(Object formula, Object... to) {
    Refusal refusal = catchThrowableOfType(Refusal.class, () -> batch(formula, to));
    assertThat(refusal).as("a refusal was expected").isNotNull();
    return refusal.faults();
  }

  /** The one fault there is. */
  Fault fault(Object formula, Object... to) {
    List<Fault> faults = faults(formula, to);
    assertThat(faults).hasSize(1);
    return faults.get(0);
  }

  /** Grams of each line by its path. */
  static Map<String, Double> grams(Batch batch) {
    Map<String, Double> grams = new LinkedHashMap<>();
    for (BatchLine line : batch.lines()) {
      grams.put(line.path(), line.grams().typical());
    }
    return grams;
  }

  static double grams(Batch batch, String ingredient) {
    return row(batch, ingredient).grams().typical();
  }

  static BillRow row(Batch batch, String ingredient) {
    return batch.bill().stream()
        .filter(row -> row.ingredient().id().equals(ingredient))
        .findFirst()
        .orElseThrow(() -> new AssertionError(ingredient + " is not in the bill"));
  }

  static BatchLine line(Batch batch, String path) {
    return batch.lines().stream()
        .filter(line -> line.path().equals(path))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no line " + path));
  }

  static Map<String, Double> byProducts(Batch batch) {
    Map<String, Double> grams = new LinkedHashMap<>();
    for (ByProduct left : batch.byProducts()) {
      grams.put(left.ingredient(), left.grams());
    }
    return grams;
  }

  static Part part(Batch batch, String formula) {
    return parts(batch.root()).stream()
        .filter(part -> formula.equals(part.formula().id()))
        .findFirst()
        .orElseThrow(() -> new AssertionError("no part " + formula));
  }

  /** A part and all parts within it. */
  static List<Part> parts(Part root) {
    List<Part> parts = new ArrayList<>(List.of(root));
    root.parts().forEach(part -> parts.addAll(parts(part)));
    return parts;
  }

  static List<String> codes(Batch batch) {
    return batch.remarks().stream().map(Remark::code).toList();
  }
}
