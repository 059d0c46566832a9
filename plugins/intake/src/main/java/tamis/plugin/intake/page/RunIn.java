package tamis.plugin.intake.page;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/**
 * Parts a list of ingredients that runs on behind its heading, as old books set it: "INGREDIENTS.—½
 * lb. of flour, 2 eggs, the rind of 1 lemon." Each piece is a line with its place in the source.
 */
final class RunIn {
  private final LineReader lines;
  private final Tongue tongue;

  RunIn(LineReader lines) {
    this.lines = lines;
    this.tongue = lines.tongue();
  }

  /** The same lines, with each list that runs on as its heading and its pieces. */
  List<SourceLine> parted(List<SourceLine> source) {
    List<SourceLine> parted = new ArrayList<>();
    for (int i = 0; i < source.size(); i++) {
      SourceLine line = source.get(i);
      int list = behindHeading(line.text());
      if (list < 0) {
        parted.add(line);
        continue;
      }
      int last = i;
      while (last + 1 < source.size() && goesOn(source.get(last), source.get(last + 1))) {
        last++;
      }
      List<SourceLine> pieces = pieces(source.subList(i, last + 1), list);
      if (pieces.size() < 2) {
        parted.add(line);
        continue;
      }
      parted.add(part(source.subList(i, i + 1), 0, list));
      parted.addAll(pieces);
      i = last;
    }
    return parted;
  }

  /** Where the list begins behind a heading in the same line; -1 if the line is no such. */
  private int behindHeading(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    Tongue.@Nullable Match heading = tongue.match("ingredients", phrase, 0);
    if (heading == null) {
      return -1;
    }
    int at = heading.next();
    int signs = at;
    while (phrase.is(at, ".") || phrase.is(at, ":") || phrase.isDash(at)) {
      at++;
    }
    return at > signs && phrase.has(at) ? phrase.get(at).start() : -1;
  }

  /** Whether a line ends in the middle of what the next one goes on with. */
  private boolean goesOn(SourceLine line, SourceLine next) {
    Phrase phrase = Phrase.of(next.text(), tongue);
    boolean near = next.number() == line.number() + 1;
    boolean mark = line.text().endsWith(",") || line.text().endsWith(";");
    boolean amount = phrase.isNumber(0) || lines.measures(phrase).at(0) != null;
    boolean begins = !Character.isLowerCase(next.text().charAt(0));
    return near && (mark || !(amount || begins));
  }

  private List<SourceLine> pieces(List<SourceLine> block, int list) {
    StringBuilder text = new StringBuilder();
    block.forEach(line -> text.append(text.isEmpty() ? "" : " ").append(line.text()));
    Phrase phrase = Phrase.of(text.toString(), tongue);
    List<SourceLine> pieces = new ArrayList<>();
    int start = list;
    for (int i = 0; i < phrase.size(); i++) {
      int behind = phrase.is(i, "(") ? phrase.behindParenthesis(i) : -1;
      i = behind > 0 ? behind - 1 : i;
      boolean inList = phrase.get(i).start() > start;
      int next = inList ? behindJoint(phrase, i) : i;
      if (next > i && begins(phrase, next)) {
        pieces.add(part(block, start, phrase.get(i).start()));
        start = phrase.get(next).start();
      }
    }
    pieces.add(part(block, start, text.length()));
    return pieces;
  }

  /** Behind a comma, and "and" with it; the place itself if none stands there. */
  private int behindJoint(Phrase phrase, int at) {
    boolean comma = phrase.is(at, ",") || phrase.is(at, ";");
    int and = tongue.behind("and", phrase, comma ? at + 1 : at);
    boolean number = phrase.isNumber(at - 1); // "one and a half"
    return comma ? and : number ? at : and;
  }

  /** Whether another ingredient begins at a token. */
  private boolean begins(Phrase phrase, int from) {
    if (lines.measures(phrase).at(from) != null) {
      return true;
    }
    boolean comma = phrase.is(from - 1, ",") || phrase.is(from - 1, ";");
    boolean part = tongue.match("partof", phrase, tongue.behind("of", phrase, from)) != null;
    int end = from;
    while (phrase.has(end) && !phrase.is(end, ",") && !phrase.is(end, ";")) {
      end++;
    }
    return comma
        && (part
            || tongue.match("vague", phrase, from) != null
            || lines.read(phrase.text(from, end)).isIngredientKnown());
  }

  /** A part of lines that were set together with a space between them. */
  private static SourceLine part(List<SourceLine> block, int from, int to) {
    StringBuilder text = new StringBuilder();
    int number = 0;
    int start = 0;
    int end = 0;
    int before = 0;
    for (SourceLine line : block) {
      int behind = before + line.text().length();
      if (to > before && from < behind) {
        int first = Math.max(from, before) - before;
        int last = Math.min(to, behind) - before;
        String words = line.text().substring(first, last);
        start = text.isEmpty() ? line.start() + first : start;
        number = text.isEmpty() ? line.number() : number;
        end = line.start() + first + words.stripTrailing().length();
        text.append(text.isEmpty() ? "" : " ").append(words.strip());
      }
      before = behind + 1;
    }
    return new SourceLine(number, text.toString(), start, end);
  }
}
