package tamis.plugin.intake.line;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Reads the same quantity said once more: "(120 g)", "/9 oz", "or 1 stick", "= 240 ml". */
record Equivalents(Tongue tongue, Phrase phrase, MeasureReader measures) {

  /** Gathers them from a token on; tells the token behind the last. */
  int read(int from, Gathered gathered) {
    int at = from;
    while (true) {
      int behind = one(at, gathered);
      if (behind == at) {
        return at;
      }
      at = behind;
    }
  }

  private int one(int at, Gathered gathered) {
    if (phrase.is(at, "(") || phrase.is(at, "[")) {
      int behind = phrase.behindParenthesis(at);
      return behind > 0 && isOnlyMeasures(at + 1, behind - 1, gathered) ? behind : at;
    }
    boolean mark = phrase.is(at, "/") || phrase.is(at, "=") || phrase.is(at, "|");
    int from = mark ? at + 1 : tongue.behind("or", phrase, at);
    if (from == at) {
      return at;
    }
    @Nullable Measure other = measures.at(from);
    boolean counted = other != null && !mark && phrase.isWord(other.next()); // "or ten eggs"
    if (other == null || (other.unit() == null && !counted)) {
      return at;
    }
    gathered.also(other);
    return other.next();
  }

  /** "120 g", "about 120 g", "4 oz / 115 g", "1 1/2 sticks; 170 grams". */
  boolean isOnlyMeasures(int from, int to, Gathered gathered) {
    int at = from;
    List<Measure> found = new ArrayList<>();
    while (at < to) {
      boolean between =
          phrase.is(at, "/")
              || phrase.is(at, ",")
              || phrase.is(at, ";")
              || phrase.is(at, "=")
              || tongue.match("or", phrase, at) != null;
      if (between && !found.isEmpty()) {
        at++;
        continue;
      }
      @Nullable Measure measure = measures.at(at);
      boolean share = measure != null && "%".equals(measure.unit());
      if (measure == null || measure.unit() == null || share || measure.next() > to) {
        return false;
      }
      found.add(measure);
      at = measure.next();
    }
    found.forEach(gathered::also);
    return !found.isEmpty();
  }
}
