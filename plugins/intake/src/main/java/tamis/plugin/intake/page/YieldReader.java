package tamis.plugin.intake.page;

import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.Amount;
import tamis.plugin.intake.line.AmountReader;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads how much a recipe gives: portions or pieces, where it says one number. */
final class YieldReader {
  private final Tongue tongue;
  private Page.@Nullable Gives portions;
  private Page.@Nullable Gives pieces;

  YieldReader(Tongue tongue) {
    this.tongue = tongue;
  }

  Page.@Nullable Gives portions() {
    return portions;
  }

  Page.@Nullable Gives pieces() {
    return pieces;
  }

  /**
   * Reads "Serves 8", "Makes two 9-inch layers", "Für 4 Personen", "Yield: 2 loaves"; false if a
   * line is none of these.
   */
  boolean line(Phrase phrase) {
    Tongue.@Nullable Match serves = tongue.match("portions", phrase, 0);
    Tongue.@Nullable Match makes = tongue.match("yield", phrase, 0);
    int at = serves != null ? serves.next() : makes != null ? makes.next() : 0;
    boolean said = serves != null || makes != null;
    at = said ? at : tongue.behind("partfor", phrase, 0);
    while (phrase.is(at, ":") || phrase.isDash(at)) {
      at++;
    }
    at = tongue.behind("about", phrase, at);
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(at);
    if (amount == null) {
      return false;
    }
    boolean people = tongue.match("portions", phrase, amount.next()) != null;
    boolean bare = tongue.match("partfor", phrase, 0) != null && phrase.has(amount.next());
    if (!people && (!said || bare)) { // "für 10 Pfennig Hefe" is none
      return false;
    }
    if (serves != null) {
      portions(amount);
    } else {
      amount(phrase, at);
    }
    return true;
  }

  private void portions(Amount amount) {
    portions = amount.isRange() || amount.low() <= 0 ? portions : new Page.Gives(amount.low());
  }

  /** Reads "1 loaf, 12 slices" from a token on. */
  void amount(Phrase phrase, int from) {
    int at = from;
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(at);
    while (amount != null) {
      one(phrase, amount);
      at = amount.next();
      while (phrase.has(at) && !phrase.is(at, ",")) {
        at++;
      }
      amount = phrase.has(at) ? new AmountReader(tongue, phrase).at(at + 1) : null;
    }
  }

  /** Reads what a title says in brackets: "Tea loaf (2 loaves)". */
  void inBrackets(Phrase phrase) {
    for (int i = 0; i < phrase.size(); i++) {
      int behind = phrase.is(i, "(") ? phrase.behindParenthesis(i) : -1;
      @Nullable Amount amount = behind < 0 ? null : new AmountReader(tongue, phrase).at(i + 1);
      if (amount != null && behind - 1 <= amount.next() + 2) {
        amount(phrase, i + 1);
      }
    }
  }

  private void one(Phrase phrase, Amount amount) {
    boolean people = tongue.match("portions", phrase, amount.next()) != null;
    String unit = phrase.folded(amount.next(), Math.min(phrase.size(), amount.next() + 1));
    boolean slices = unit.startsWith("slice") || unit.startsWith("serving");
    boolean weight = tongue.unit(phrase, amount.next()) != null;
    if (people || slices) {
      portions(amount);
    } else if (!weight && !amount.isRange() && amount.low() > 0) {
      pieces = new Page.Gives(amount.low());
    }
  }
}
