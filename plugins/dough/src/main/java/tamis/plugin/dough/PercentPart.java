package tamis.plugin.dough;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.formula.Batch.Part;
import tamis.engine.formula.Role;
import tamis.engine.note.Notes;
import tamis.engine.record.Described;

/** A preferment, soaker or scald with a table of its own. */
public record PercentPart(
    @Described("Place of the formula line it stands for") String path,
    @Described("Id of the formula") @Nullable String formula,
    @Described("Title of the formula") String title,
    @Described("What it is within the formula above") Role role,
    @Described(value = "As it goes into the mix", unit = "g") double grams,
    @Described(value = "The same as a percent of the total flour", unit = "%") double percent,
    @Described(value = "Its own flour", unit = "g") double flourGrams,
    @Described(value = "Its part of the total flour", unit = "%") double flourPercent,
    @Described(value = "Sum of its own percentages; left out without flour", unit = "%")
        @Nullable Double totalPercent,
    @Described(value = "Water in percent of its own flour; left out without flour", unit = "%")
        @Nullable Double hydrationPercent,
    @Described("As it is mixed, in percent of its own flour") List<PercentLine> lines) {

  /** All parts that join, at any depth, each before its own parts. */
  static List<PercentPart> of(Part root) {
    List<PercentPart> parts = new ArrayList<>();
    collect(root, root.flour(), parts);
    return parts;
  }

  private static void collect(Part formula, double flour, List<PercentPart> parts) {
    for (Part part : formula.parts()) {
      if (part.role().joins()) {
        parts.add(of(part, flour));
        collect(part, flour, parts);
      }
    }
  }

  private static PercentPart of(Part part, double flour) {
    Overall own = Overall.of(part);
    double grams = part.finished().typical();
    return new PercentPart(
        part.path(),
        part.formula().id(),
        part.formula().name(),
        part.role(),
        grams,
        100 * grams / flour,
        part.flour(),
        100 * part.flour() / flour,
        Percent.of(own.grams(), part.flour()),
        Percent.of(Water.of(own.joined(), new Notes()).lines(), part.flour()),
        asMixed(part, part.flour()));
  }

  /** Lines as they are mixed: each line of the formula, a part as one. */
  static List<PercentLine> asMixed(Part formula, double flour) {
    List<PercentLine> lines = new ArrayList<>();
    for (Mixed mixed : Mixed.of(formula)) {
      if (mixed.line() != null && !mixed.line().isAsNeeded()) {
        lines.add(PercentLine.of(mixed.line(), mixed.line().grams().typical(), flour));
      } else if (mixed.part() != null) {
        lines.add(PercentLine.of(mixed.part(), mixed.part().finished().typical(), flour));
      }
    }
    return lines;
  }

  /** Flour within preferments, at any depth of parts that join. */
  static double prefermentedFlour(Part formula) {
    double flour = 0;
    for (Part part : formula.parts()) {
      if (part.role() == Role.PREFERMENT) {
        flour += part.flour();
      } else if (part.role().joins()) {
        flour += prefermentedFlour(part);
      }
    }
    return flour;
  }
}
