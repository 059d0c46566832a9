package tamis.plugin.intake.line;

import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.name.Found;

/**
 * What was read of one line.
 *
 * @param text the line as written
 * @param measure how much, or null
 * @param also the same said in other units, such as a weight in brackets
 * @param asNeeded whether no amount is meant
 * @param asWritten the ingredient in the source's words
 * @param found what the ingredient is; null if nothing goes by the name
 * @param states in which it is measured: words before the ingredient
 * @param size large, small, or null
 * @param measuredAs a state that is said behind the name and was there when it was measured, or
 *     null
 * @param preparation what is done with it afterwards, and remarks of the source
 * @param doubts why it cannot be told for certain what is meant
 * @param besides what stands in the line too and is not in its quantity: a second ingredient
 * @param loose how far it is from a plain line: 0 is plain, each doubtful thing adds
 */
public record ReadLine(
    String text,
    @Nullable Measure measure,
    List<Measure> also,
    boolean asNeeded,
    String asWritten,
    @Nullable Found found,
    List<State> states,
    @Nullable String size,
    @Nullable String measuredAs,
    List<String> preparation,
    List<String> doubts,
    List<String> besides,
    double loose) {

  /**
   * A state as written.
   *
   * @param known the word that tables of densities have for it
   * @param temper whether it is only how warm it is
   */
  public record State(String written, String known, boolean temper) {}

  public ReadLine {
    also = List.copyOf(also);
    states = List.copyOf(states);
    preparation = List.copyOf(preparation);
    doubts = List.copyOf(doubts);
    besides = List.copyOf(besides);
  }

  /** The same line with one more doubt. */
  public ReadLine doubted(String why) {
    List<String> more = new java.util.ArrayList<>(doubts);
    more.add(why);
    return new ReadLine(
        text,
        measure,
        also,
        asNeeded,
        asWritten,
        found,
        states,
        size,
        measuredAs,
        preparation,
        more,
        besides,
        loose);
  }

  public boolean isIngredientKnown() {
    return found != null && found.isKnown();
  }

  public boolean isIngredientNamed() {
    return found != null;
  }

  public boolean hasUnit() {
    return measure != null && measure.unit() != null;
  }

  /** An amount in figures, or with a unit: prose seldom begins so. */
  public boolean isMeasured() {
    return measure != null && (measure.unit() != null || !measure.amount().worded());
  }
}
