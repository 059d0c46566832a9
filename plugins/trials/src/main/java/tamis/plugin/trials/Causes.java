package tamis.plugin.trials;

import java.util.List;
import java.util.Locale;
import tamis.engine.note.Notes;

/** Which differences go with the outcome, and what may be said of that. */
final class Causes {
  private final TrialBook book;
  private final List<Weighted> strongest;
  private final int looks;
  private final boolean tooFew;

  Causes(List<Weighted> differing, TrialBook book) {
    this.book = book;
    this.tooFew =
        Math.min(book.count(Outcome.KEPT), book.count(Outcome.GONE_WRONG)) < Weighted.FEWEST;
    this.looks = (int) differing.stream().filter(Weighted::isLook).count();
    this.strongest = differing.stream().filter(Weighted::goesWithTheOutcome).toList();
  }

  boolean tooFew() {
    return tooFew;
  }

  int looks() {
    return looks;
  }

  List<Weighted> strongest() {
    return strongest;
  }

  String counted() {
    return book.count(Outcome.KEPT) + " kept, " + book.count(Outcome.GONE_WRONG) + " gone wrong";
  }

  String conclusion() {
    if (tooFew) {
      return "too few to name a cause: "
          + counted()
          + "; at least "
          + Weighted.FEWEST
          + " of each are needed";
    }
    return strongest.isEmpty()
        ? "nothing that was read goes with the outcome: " + counted()
        : Words.many(strongest.size(), "measure")
            + (strongest.size() == 1 ? " goes" : " go")
            + " with the outcome ("
            + counted()
            + "); that it is the cause is not shown by that";
  }

  List<LikelyCause> candidates() {
    return strongest.stream().map(this::candidate).toList();
  }

  private LikelyCause candidate(Weighted one) {
    Measured.Key key = one.measured().key();
    double chance = one.test() == null ? 1 : one.test().chance();
    double over = Math.min(1, chance * looks);
    double separation = one.separation() == null ? 0 : one.separation();
    String support =
        String.format(
            Locale.ROOT,
            "%s; separation %s of 1; chance alone does as well %s of the time, over %s %s",
            new Support(one.measured(), book).words(),
            Words.number(separation),
            Words.percent(chance),
            Words.many(looks, "look"),
            Words.percent(over));
    return new LikelyCause(
        new Support(one.measured(), book).cause(),
        Comparison.orNull(key.stage()),
        key.measure(),
        Comparison.orNull(key.of()),
        support,
        separation,
        chance,
        over);
  }

  void remark(Notes notes) {
    if (tooFew) {
      notes.remark("too-few", "/trials", conclusion());
    } else if (looks > 0) {
      notes.estimate(
          "many-looks",
          "/trials",
          Words.many(looks, "measure")
              + " could have been named: of so many, one in ten goes with the outcome by chance"
              + " alone; `chanceOverLooks` allows for that");
    }
    int notJudged = book.count(Outcome.NOT_JUDGED);
    if (notJudged > 0) {
      notes.remark(
          "not-judged",
          "/trials",
          Words.many(notJudged, "trial") + " without an outcome that counts: shown, not judged");
    }
  }
}
