package tamis.plugin.nutrition;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch;
import tamis.engine.formula.Contents;
import tamis.engine.ingredient.AllergenFact;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.plugin.nutrition.AllergenRules.Naming;

/**
 * The allergens of a batch by one regime: of every line of every part, also of those "as needed"
 * and of those that are strained off.
 */
final class AllergenDeclaration {
  private final AllergenRegime regime;
  private final Notes notes;
  private final Map<Naming, Ways> contains = new LinkedHashMap<>();
  private final Map<Naming, Ways> mayContain = new LinkedHashMap<>();
  private final Map<AllergenFact, Ways> others = new LinkedHashMap<>();
  private final Set<Allergens.Exempt> exempt = new LinkedHashSet<>();

  /** The ways by which an allergen came in. */
  private record Ways(Set<String> via, Set<String> paths) {
    static Ways none() {
      return new Ways(new LinkedHashSet<>(), new LinkedHashSet<>());
    }
  }

  private AllergenDeclaration(AllergenRegime regime, Notes notes) {
    this.regime = regime;
    this.notes = notes;
  }

  static AllergenDeclaration of(Contents contents, AllergenRegime regime, Notes notes) {
    AllergenDeclaration declaration = new AllergenDeclaration(regime, notes);
    contents.entries().forEach(declaration::add);
    declaration.mayContain.keySet().removeAll(declaration.contains.keySet());
    return declaration;
  }

  private void add(Contents.Entry entry) {
    entry.line().ingredient().contains().forEach(fact -> add(fact, entry, contains));
    entry.line().ingredient().mayContain().forEach(fact -> add(fact, entry, mayContain));
  }

  private void add(AllergenFact fact, Contents.Entry entry, Map<Naming, Ways> into) {
    @Nullable Naming naming = AllergenRules.naming(regime, fact);
    Ingredient ingredient = entry.line().ingredient();
    if (naming == null || !naming.isNamed()) {
      if (into == contains) {
        add(others.computeIfAbsent(fact, f -> Ways.none()), entry);
      }
      return;
    }
    @Nullable Row exemption = AllergenRules.exemption(regime, ingredient, fact);
    if (exemption != null) {
      exempt.add(
          new Allergens.Exempt(
              naming.allergen(), naming.species(), ingredient.id(), exemption.text("reason")));
      notes.cite(exemption, "/exempt");
      return;
    }
    if (naming.wantsSpecies()) {
      notes.remark(
          "species-missing",
          "/formula",
          "the document of `"
              + ingredient.id()
              + "` does not say of which species its "
              + naming.name()
              + " is; a label must");
    }
    add(into.computeIfAbsent(naming, n -> Ways.none()), entry);
  }

  private static void add(Ways ways, Contents.Entry entry) {
    List<String> names = new ArrayList<>();
    for (Batch.Part part : entry.through()) {
      names.add(part.formula().name());
    }
    names.add(entry.line().ingredient().id());
    ways.via().add(String.join(" > ", names));
    ways.paths().add(entry.line().path());
  }

  /** What the ingredients contain, mandatory first. */
  List<NamedAllergen> contains() {
    return named(contains, "/contains/");
  }

  /** What their documents say they may contain. */
  List<NamedAllergen> mayContain() {
    return named(mayContain, "/mayContain/");
  }

  /** Allergens of the documents that this regime does not name. */
  List<Allergens.Other> others() {
    List<Allergens.Other> list = new ArrayList<>();
    others.forEach(
        (fact, ways) ->
            list.add(
                new Allergens.Other(
                    AllergenRules.key(fact.allergen()), fact.species(), List.copyOf(ways.via()))));
    return list;
  }

  List<Allergens.Exempt> exempt() {
    return List.copyOf(exempt);
  }

  private List<NamedAllergen> named(Map<Naming, Ways> found, String at) {
    List<Naming> order = new ArrayList<>(found.keySet());
    order.sort(
        (a, b) -> Boolean.compare(b.isMandatory(), a.isMandatory())); // stable: the order of work
    List<NamedAllergen> list = new ArrayList<>();
    for (Naming naming : order) {
      String pointer = at + list.size();
      notes.cite(naming.row(), pointer);
      @Nullable Row code = naming.code();
      if (code != null) {
        notes.cite(code, pointer + "/gs1");
      }
      @Nullable Ways ways = found.get(naming);
      list.add(
          new NamedAllergen(
              naming.allergen(),
              naming.species(),
              naming.name(),
              naming.standing(),
              naming.limit(),
              code == null ? null : code.text("code"),
              ways == null ? List.of() : List.copyOf(ways.via()),
              ways == null ? List.of() : List.copyOf(ways.paths())));
    }
    return list;
  }
}
