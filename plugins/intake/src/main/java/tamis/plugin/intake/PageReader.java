package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Tells title, yield, headings, ingredients, steps and notes of a page of text apart. */
final class PageReader {
  private static final int LONGEST_LINE = 400;
  private static final int LONGEST_HEADING = 60;
  private static final int WORDS_OF_A_LINE = 30;
  private static final int WORDS_OF_A_BARE_LINE = 8;
  private static final int WORDS_OF_A_LATE_LINE = 12;

  private final LineReader lines;
  private final Tongue tongue;
  private final Map<String, String> corrections;
  private final List<Page.Entry> entries = new ArrayList<>();
  private Section section = Section.UNKNOWN;
  private @Nullable String title;
  private @Nullable String part;
  private final YieldReader yields;

  private enum Section {
    UNKNOWN,
    INGREDIENTS,
    STEPS,
    NOTES
  }

  /**
   * @param corrections what stands instead of a line, by the line as written
   */
  PageReader(LineReader lines, Map<String, String> corrections) {
    this.lines = lines;
    this.tongue = lines.tongue();
    this.corrections = corrections;
    this.yields = new YieldReader(tongue);
  }

  Page read(List<SourceLine> source) {
    for (int i = 0; i < source.size(); i++) {
      SourceLine line = source.get(i);
      @Nullable String instead = corrections.get(line.text());
      if (instead != null) {
        corrected(line, instead);
      } else {
        entry(line, i == 0 && source.size() > 1, source.size() == 1);
      }
    }
    return new Page(title, yields.portions(), yields.pieces(), entries);
  }

  /** A recipe whose parts are named, as in JSON-LD or a table. */
  Page recipe(Source source, int most) {
    title = source.title();
    for (Source.Piece piece : source.lines()) {
      if (entries.size() < most) {
        part = piece.part();
        SourceLine line = piece.source();
        corrected(line, corrections.getOrDefault(line.text(), line.text()));
      }
    }
    part = null;
    for (String said : source.yields()) {
      Phrase phrase = Phrase.of(said, tongue);
      SourceLine line = new SourceLine(1, said, 0, said.length());
      if (!yields.line(phrase)) {
        yields.amount(phrase, 0);
      }
      add(line, Page.Kind.YIELD);
    }
    source.steps().forEach(line -> add(line, Page.Kind.STEP));
    source.notes().forEach(line -> add(line, Page.Kind.NOTE));
    return new Page(title, yields.portions(), yields.pieces(), entries);
  }

  /** What a person wrote: several lines with {@code |} between them, or {@code -} for none. */
  private void corrected(SourceLine line, String instead) {
    if (instead.equals("-")) {
      add(line, Page.Kind.NOTE);
      return;
    }
    for (String one : instead.split("\\|", -1)) {
      if (!one.isBlank()) {
        ingredient(line, lines.read(one.strip()));
      }
    }
  }

  private void entry(SourceLine line, boolean first, boolean alone) {
    String text = line.text();
    if (text.length() > LONGEST_LINE) {
      add(line, section == Section.NOTES ? Page.Kind.NOTE : Page.Kind.STEP);
      return;
    }
    if (sectionHeading(line)) {
      return;
    }
    if (words(text) <= WORDS_OF_A_LATE_LINE && yields.line(Phrase.of(text, tongue))) {
      add(line, Page.Kind.YIELD);
      return;
    }
    if (words(text) > WORDS_OF_A_LINE || isProse(text, words(text))) {
      prose(line, first);
      return;
    }
    if (isAside(text)) {
      add(line, Page.Kind.NOTE);
      return;
    }
    if (text.equalsIgnoreCase(title)) { // pages of the web say it twice
      add(line, Page.Kind.TITLE);
      return;
    }
    ReadLine read = lines.read(text);
    boolean onlyLine = alone && words(text) <= WORDS_OF_A_LINE && !isDirection(text);
    boolean plain = isPlain(read, text) || onlyLine;
    if (first && !plain) {
      title(line);
    } else if (section == Section.STEPS || section == Section.NOTES) {
      boolean again =
          plain && read.measure() != null && (hasUnit(read) || read.isIngredientKnown());
      if (partHeading(line, read)) {
        return;
      }
      if (tongue.match("keeping", Phrase.of(text, tongue), 0) != null) {
        add(line, Page.Kind.NOTE);
      } else if (again && section == Section.STEPS && words(text) <= WORDS_OF_A_LATE_LINE) {
        ingredient(line, read);
      } else if (hasFormOfIngredient(line, read)) {
        late(line, read);
      } else {
        add(line, section == Section.STEPS ? Page.Kind.STEP : Page.Kind.NOTE);
      }
    } else if (plain) {
      ingredient(line, read);
    } else if (!partHeading(line, read)) {
      other(line, read);
    }
  }

  /** A line of ingredients among steps or notes: it is not passed over as one of them. */
  private void late(SourceLine line, ReadLine read) {
    boolean doubtful = section == Section.NOTES && read.doubts().isEmpty();
    ingredient(
        line,
        doubtful
            ? read.doubted("it stands among the notes: whether it belongs to them is not clear")
            : read);
  }

  /**
   * Whether a short line begins with an amount, or names a food or a part of one, or holds an
   * amount with a unit, and says no work: then it is no step, understood or not.
   */
  private boolean hasFormOfIngredient(SourceLine line, ReadLine read) {
    String text = line.text();
    int words = words(text);
    boolean ended = text.endsWith(".") || text.endsWith("!") || text.endsWith("?");
    if (isDirection(text) || startsWithNumber(text) || words > WORDS_OF_A_LINE) {
      return false;
    }
    Phrase phrase = Phrase.of(text, tongue);
    @Nullable Amount amount = new AmountReader(tongue, phrase).at(0);
    boolean article = amount != null && !phrase.isNumber(0) && amount.low() == 1;
    if (amount != null && (!article || hasUnit(read))) {
      boolean sentence = ended && words > WORDS_OF_A_BARE_LINE;
      boolean few = words <= WORDS_OF_A_LATE_LINE || (read.isIngredientKnown() && hasUnit(read));
      return few && !sentence && !isOtherThanFood(phrase, amount.next());
    }
    if (ended || words > WORDS_OF_A_LATE_LINE || goesOn()) {
      return false;
    }
    boolean named = read.isIngredientNamed() && words <= WORDS_OF_A_BARE_LINE;
    return named || startsVaguely(text) || holdsMeasure(phrase);
  }

  /** "20 minutes at 180 °C": a time, a warmth or a length. */
  private boolean isOtherThanFood(Phrase phrase, int at) {
    int unit = phrase.isDash(at) ? at + 1 : at;
    return phrase.is(unit, "°")
        || phrase.is(unit, "%")
        || (phrase.has(unit) && Innocent.isMeasureOfNoFood(Phrase.folded(phrase.get(unit).text())));
  }

  private boolean holdsMeasure(Phrase phrase) {
    for (int i = 0; i < phrase.size(); i++) {
      @Nullable Measure measure = phrase.isNumber(i) ? lines.measures(phrase).at(i) : null;
      if (measure != null && measure.unit() != null && !measure.container()) {
        return true;
      }
    }
    return false;
  }

  /** Whether the line before breaks off within a sentence of a step. */
  private boolean goesOn() {
    if (entries.isEmpty()) {
      return false;
    }
    Page.Entry last = entries.get(entries.size() - 1);
    boolean prose = last.kind() == Page.Kind.STEP || last.kind() == Page.Kind.NOTE;
    Phrase before = Phrase.of(last.source().text(), tongue);
    int end = before.size() - 1;
    boolean joins =
        before.is(end, ",")
            || tongue.match("and", before, end) != null
            || tongue.match("or", before, end) != null
            || tongue.match("of", before, end) != null;
    return prose && end > 2 && joins;
  }

  /** A line in brackets, or one that calls itself a note. */
  private boolean isAside(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    boolean bracketed = phrase.is(0, "(") && phrase.behindParenthesis(0) >= phrase.size() - 1;
    Tongue.@Nullable Match note = tongue.match("notes", phrase, 0);
    return bracketed || (note != null && phrase.is(note.next(), ":"));
  }

  /** Sentences: a step where there are ingredients before them, else a note. */
  private void prose(SourceLine line, boolean first) {
    boolean started = entries.stream().anyMatch(e -> e.kind() == Page.Kind.INGREDIENT);
    boolean keeping = tongue.match("keeping", Phrase.of(line.text(), tongue), 0) != null;
    boolean step = (started || section == Section.STEPS) && section != Section.NOTES;
    if (first && words(line.text()) <= WORDS_OF_A_LATE_LINE) {
      title(line);
      return;
    }
    section = step && !keeping ? Section.STEPS : section;
    add(line, step && !keeping ? Page.Kind.STEP : Page.Kind.NOTE);
  }

  /** Whether a line is one of ingredients: it begins with an amount, or says that none is meant. */
  private boolean isPlain(ReadLine read, String text) {
    int words = words(text);
    if (read.isMeasured()) {
      return read.isIngredientNamed()
          || (!isDirection(text) && (hasUnit(read) || words <= WORDS_OF_A_BARE_LINE));
    }
    boolean vague = startsVaguely(text) && (read.isIngredientNamed() || holdsNumber(text));
    boolean named = read.isIngredientNamed() && (read.measure() != null || read.asNeeded());
    return named || vague;
  }

  private boolean holdsNumber(String text) {
    return Phrase.of(text, tongue).tokens().stream().anyMatch(Token::isNumber);
  }

  private static boolean hasUnit(ReadLine read) {
    return read.measure() != null && read.measure().unit() != null;
  }

  private boolean startsVaguely(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    for (int i = 0; i < Math.min(3, phrase.size()); i++) {
      boolean part = tongue.match("partof", phrase, i) != null;
      if (part || tongue.match("vague", phrase, i) != null) {
        return true;
      }
    }
    for (int i = 0; i < phrase.size(); i++) {
      if (tongue.match("sizeof", phrase, i) != null) {
        return true;
      }
    }
    return false;
  }

  /** Sentences: a point with a capital behind it, or a long line that ends with a point. */
  private boolean isProse(String text, int words) {
    for (int i = 1; i + 2 < text.length(); i++) {
      boolean stop = text.charAt(i) == '.' || text.charAt(i) == '!' || text.charAt(i) == '?';
      boolean letter = Character.isLetter(text.charAt(i - 1)) && i > 3;
      if (stop
          && letter
          && text.charAt(i + 1) == ' '
          && Character.isUpperCase(text.charAt(i + 2))) {
        int start = text.lastIndexOf(' ', i) + 1;
        if (i - start > 3 && words(text.substring(0, i)) > 3) {
          return true;
        }
      }
    }
    return words > 14 && text.endsWith(".");
  }

  private boolean isDirection(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    int at = 0;
    while (phrase.has(at) && !phrase.isWord(at)) {
      at++;
    }
    boolean listed =
        phrase.is(1, ",") || phrase.is(1, "(") || phrase.is(1, ":") || phrase.size() == 1;
    return at == 0 && !listed && tongue.match("verb", phrase, 0) != null;
  }

  private void other(SourceLine line, ReadLine read) {
    String text = line.text();
    int words = words(text);
    boolean sentence = (text.endsWith(".") && words > 2) || words > 12;
    if (tongue.match("keeping", Phrase.of(text, tongue), 0) != null) {
      add(line, Page.Kind.NOTE);
    } else if (hasFormOfIngredient(line, read)) {
      ingredient(line, read);
    } else if (isDirection(text) || startsWithNumber(text) || sentence) {
      boolean started = entries.stream().anyMatch(e -> e.kind() == Page.Kind.INGREDIENT);
      section = started && section == Section.UNKNOWN ? Section.STEPS : section;
      add(line, started || section == Section.INGREDIENTS ? Page.Kind.STEP : Page.Kind.NOTE);
      section = section == Section.INGREDIENTS ? Section.STEPS : section;
    } else if (section == Section.INGREDIENTS || words <= WORDS_OF_A_BARE_LINE) {
      ingredient(line, read);
    } else {
      add(line, Page.Kind.NOTE);
    }
  }

  private boolean startsWithNumber(String text) {
    Phrase phrase = Phrase.of(text, tongue);
    return phrase.isNumber(0) && (phrase.is(1, ".") || phrase.is(1, ")"));
  }

  /** "Ingredients", "Method:", "## Notes". */
  private boolean sectionHeading(SourceLine line) {
    String bare = bare(line.text());
    for (Section of : List.of(Section.INGREDIENTS, Section.STEPS, Section.NOTES)) {
      if (tongue.knows(of.name().toLowerCase(Locale.ROOT), bare)) {
        section = of;
        add(line, Page.Kind.HEADING);
        return true;
      }
    }
    return false;
  }

  private static String bare(String text) {
    @Nullable String trimmed = trimmed(text);
    return trimmed == null ? "" : Phrase.folded(trimmed);
  }

  /** The words of a heading without its marks; null if there are none. */
  private static @Nullable String trimmed(String text) {
    int from = 0;
    int to = text.length();
    while (from < to && "#*=_-•: ".indexOf(text.charAt(from)) >= 0) {
      from++;
    }
    while (to > from && "#*=_-:. ".indexOf(text.charAt(to - 1)) >= 0) {
      to--;
    }
    return from == to ? null : text.substring(from, to);
  }

  /** "For the filling", "Topping:", "CRUST". */
  private boolean partHeading(SourceLine line, ReadLine read) {
    String text = line.text();
    if (text.length() > LONGEST_HEADING || read.isMeasured()) {
      return false;
    }
    Phrase phrase = Phrase.of(text, tongue);
    Tongue.@Nullable Match partFor = tongue.match("partfor", phrase, 0);
    boolean forPart = partFor != null && words(text) <= 6 && !text.endsWith(".");
    boolean colon = text.endsWith(":") && words(text) <= 6;
    boolean marked = text.startsWith("#") || (text.startsWith("**") && text.endsWith("**"));
    boolean capitals =
        words(text) <= 5 && text.equals(text.toUpperCase(Locale.ROOT)) && phrase.isWord(0);
    if (!forPart && !colon && !marked && !capitals) {
      return false;
    }
    String words = partFor != null ? phrase.text(partFor.next(), phrase.size()) : text;
    part = trimmed(words);
    section = section == Section.STEPS && !forPart && !colon ? Section.UNKNOWN : section;
    add(line, Page.Kind.HEADING);
    return true;
  }

  private void title(SourceLine line) {
    title = line.text().replaceAll("^[#* =]+|[#* =]+$", "");
    Phrase phrase = Phrase.of(line.text(), tongue);
    for (int i = 0; i < phrase.size(); i++) {
      if (phrase.is(i, "(")) {
        int behind = phrase.behindParenthesis(i);
        @Nullable Amount amount = new AmountReader(tongue, phrase).at(i + 1);
        if (amount != null && behind - 1 <= amount.next() + 2) {
          yields.amount(phrase, i + 1);
        }
      }
    }
    add(line, Page.Kind.TITLE);
  }

  /** "1 teaspoon vanilla or" leaves the next line open, too. */
  private void ingredient(SourceLine line, ReadLine read) {
    if (!entries.isEmpty()) {
      Page.Entry last = entries.get(entries.size() - 1);
      Phrase before = Phrase.of(last.source().text(), tongue);
      boolean open = before.size() > 1 && tongue.match("or", before, before.size() - 1) != null;
      if (open && last.kind() == Page.Kind.INGREDIENT) {
        entries.add(
            new Page.Entry(
                line,
                Page.Kind.INGREDIENT,
                read.doubted("the line before it ends with `or`: which is meant is left open"),
                part));
        return;
      }
    }
    entries.add(new Page.Entry(line, Page.Kind.INGREDIENT, read, part));
  }

  private void add(SourceLine line, Page.Kind kind) {
    entries.add(new Page.Entry(line, kind, null, part));
  }

  private static int words(String text) {
    int words = 0;
    boolean inside = false;
    for (int i = 0; i < text.length(); i++) {
      boolean space = Tokenizer.isSpace(text.charAt(i));
      words += !space && !inside ? 1 : 0;
      inside = !space;
    }
    return words;
  }
}
