package tamis.engine.formula;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.note.Cited;
import tamis.engine.quantity.Spread;

/**
 * A line before the flour is known.
 *
 * @param index of the line in the document
 * @param ingredient what it is, or null if it is a sub-formula
 * @param part the sub-formula worked out, or null
 * @param fixed grams by its own quantity; zero if that is a percentage
 * @param flourShare the part of its mass that counts as flour here
 * @param sources rows that the grams rest on
 */
record OpenLine(
    int index,
    Line line,
    @Nullable Ingredient ingredient,
    @Nullable Draft part,
    Spread fixed,
    double flourShare,
    List<Cited> sources) {

  boolean isPercent() {
    return line.quantity().isPercent();
  }

  /** Grams for each gram of flour. */
  double perFlour() {
    return isPercent() ? line.quantity().amount() / 100 : 0;
  }

  /** The line in grams, now that the flour is known. */
  Draft.DraftLine weighed(double flour) {
    Spread grams = isPercent() ? Spread.exactly(perFlour() * flour) : fixed;
    boolean isFlour = ingredient != null && flourShare == 1;
    return new Draft.DraftLine(index, line, ingredient, part, grams, isFlour, sources);
  }

  /** Ingredient lines that it stands for, over all parts. */
  long expanded() {
    return part == null ? 1 : part.expanded();
  }
}
