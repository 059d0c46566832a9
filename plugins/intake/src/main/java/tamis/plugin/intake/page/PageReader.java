package tamis.plugin.intake.page;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.source.SourceLine;

/** Tells title, yield, headings, ingredients, steps and notes of a page of text apart. */
public final class PageReader {
  private static final int LONGEST_LINE = 400;

  private final LineReader lines;
  private final Entries entries;
  private final Headings headings;
  private final YieldReader yields;
  private @Nullable Section section;
  private @Nullable String title;

  /**
   * @param corrections what stands instead of a line, by the line as written
   */
  public PageReader(LineReader lines, Map<String, String> corrections) {
    this.lines = lines;
    this.entries = new Entries(lines, corrections);
    this.headings = new Headings(lines.tongue());
    this.yields = new YieldReader(lines.tongue());
  }

  public Page read(List<SourceLine> page) {
    List<SourceLine> source = new RunIn(lines).parted(page);
    for (int i = 0; i < source.size(); i++) {
      SourceLine line = source.get(i);
      if (!entries.corrected(line)) {
        entry(line, i == 0 && source.size() > 1, source.size() == 1);
      }
    }
    return new Page(title, yields.portions(), yields.pieces(), entries.all());
  }

  private void entry(SourceLine source, boolean first, boolean alone) {
    if (source.text().length() > LONGEST_LINE) {
      entries.add(source, section == Section.NOTES ? Page.Kind.NOTE : Page.Kind.STEP);
      return;
    }
    PageLine line = new PageLine(source, lines);
    @Nullable Section headed = headings.section(line.text());
    if (headed != null) {
      section = headed;
      entries.add(source, Page.Kind.HEADING);
    } else if (headings.begun(line.phrase()) != null) {
      section = headings.begun(line.phrase());
      entries.add(source, section == Section.NOTES ? Page.Kind.NOTE : Page.Kind.STEP);
    } else if (line.words() <= PageLine.WORDS_OF_A_LATE_LINE && yields.line(line.phrase())) {
      entries.add(source, Page.Kind.YIELD);
    } else if (line.isProse()) {
      prose(line, first);
    } else if (line.isAside()) {
      entries.add(source, Page.Kind.NOTE);
    } else if (line.text().equalsIgnoreCase(title)) { // pages of the web say it twice
      entries.add(source, Page.Kind.TITLE);
    } else {
      brief(line, first, alone);
    }
  }

  /** Sentences: a step where there are ingredients before them, else a note. */
  private void prose(PageLine line, boolean first) {
    if (first && line.words() <= PageLine.WORDS_OF_A_LATE_LINE) {
      title(line);
      return;
    }
    boolean behind = section == Section.STEPS || section == Section.NOTES;
    if (!behind && line.beginsWithMeasure()) {
      entries.ingredient(line.source(), line.read());
      return;
    }
    if (!behind && !entries.started() && line.measures() > 1) {
      entries.ingredient(
          line.source(),
          line.read().doubted("amounts stand in a sentence; write each on a line of its own"));
      return;
    }
    boolean work = (entries.started() || section == Section.STEPS) && section != Section.NOTES;
    boolean step = work && !line.begins("keeping");
    section = step ? Section.STEPS : section;
    entries.add(line.source(), step ? Page.Kind.STEP : Page.Kind.NOTE);
  }

  private void brief(PageLine line, boolean first, boolean alone) {
    ReadLine read = line.read();
    boolean only = alone && !line.isDirection();
    boolean plain = only || line.isPlain();
    if (first && !plain) {
      title(line);
    } else if (section == Section.STEPS || section == Section.NOTES) {
      behindWork(line, read, plain);
    } else if (plain) {
      entries.ingredient(line.source(), read);
    } else if (!partHeading(line)) {
      other(line);
    }
  }

  /** A line among steps or notes. */
  private void behindWork(PageLine line, ReadLine read, boolean plain) {
    boolean steps = section == Section.STEPS;
    if (partHeading(line)) {
      return;
    }
    boolean known = read.hasUnit() || (read.measure() != null && read.isIngredientKnown());
    boolean few = line.words() <= PageLine.WORDS_OF_A_LATE_LINE;
    if (line.begins("keeping")) {
      entries.add(line.source(), Page.Kind.NOTE);
    } else if (plain && known && steps && few) {
      entries.ingredient(line.source(), read);
    } else if (line.hasFormOfIngredient(entries.breaksOff())) {
      boolean doubtful = !steps && read.doubts().isEmpty(); // it is not passed over as a note
      entries.ingredient(
          line.source(),
          doubtful
              ? read.doubted("it stands among the notes: whether it belongs to them is not clear")
              : read);
    } else {
      entries.add(line.source(), steps ? Page.Kind.STEP : Page.Kind.NOTE);
    }
  }

  /** A line that is neither plain nor a heading: what stands before it decides. */
  private void other(PageLine line) {
    boolean listed = section == Section.INGREDIENTS;
    boolean sentence =
        (line.text().endsWith(".") && line.words() > 2)
            || line.words() > PageLine.WORDS_OF_A_LATE_LINE;
    if (line.begins("keeping")) {
      entries.add(line.source(), Page.Kind.NOTE);
    } else if (line.hasFormOfIngredient(entries.breaksOff())) {
      entries.ingredient(line.source(), line.read());
    } else if (line.isDirection() || line.isNumbered() || (sentence && !isListed(line, listed))) {
      boolean work = entries.started() || listed;
      entries.add(line.source(), work ? Page.Kind.STEP : Page.Kind.NOTE);
      section = work ? Section.STEPS : section;
    } else if (listed || line.words() <= PageLine.WORDS_OF_A_BARE_LINE) {
      entries.ingredient(line.source(), line.read());
    } else {
      entries.add(line.source(), Page.Kind.NOTE);
    }
  }

  /** Under the heading of the ingredients a short line that says no work is one of them. */
  private static boolean isListed(PageLine line, boolean listed) {
    int most =
        line.read().isIngredientNamed()
            ? PageLine.WORDS_OF_A_LATE_LINE
            : PageLine.WORDS_OF_A_BARE_LINE;
    return listed && line.words() <= most;
  }

  private boolean partHeading(PageLine line) {
    Headings.@Nullable Part part =
        headings.part(line, entries.isInCapitals() && line.read().isIngredientKnown());
    if (part == null) {
      return false;
    }
    entries.part(part.name());
    section = section == Section.STEPS && !part.plain() ? null : section;
    entries.add(line.source(), Page.Kind.HEADING);
    return true;
  }

  private void title(PageLine line) {
    title = line.text().replaceAll("^[#* =]+|[#* =]+$", "");
    yields.inBrackets(line.phrase());
    entries.add(line.source(), Page.Kind.TITLE);
  }
}
