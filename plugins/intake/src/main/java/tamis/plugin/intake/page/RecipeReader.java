package tamis.plugin.intake.page;

import java.util.Map;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Phrase;

/** Reads a recipe whose parts are named, as in JSON-LD or a table. */
public final class RecipeReader {
  private final LineReader lines;
  private final Entries entries;
  private final YieldReader yields;

  /**
   * @param corrections what stands instead of a line, by the line as written
   */
  public RecipeReader(LineReader lines, Map<String, String> corrections) {
    this.lines = lines;
    this.entries = new Entries(lines, corrections);
    this.yields = new YieldReader(lines.tongue());
  }

  /**
   * @param most lines of ingredients that are read
   */
  public Page read(Source source, int most) {
    for (Source.Piece piece : source.lines()) {
      if (entries.size() < most) {
        entries.part(piece.part());
        SourceLine line = piece.source();
        if (!entries.corrected(line)) {
          entries.ingredient(line, lines.read(line.text()));
        }
      }
    }
    entries.part(null);
    source.yields().forEach(this::gives);
    source.steps().forEach(line -> entries.add(line, Page.Kind.STEP));
    source.notes().forEach(line -> entries.add(line, Page.Kind.NOTE));
    return new Page(source.title(), yields.portions(), yields.pieces(), entries.all());
  }

  private void gives(String said) {
    Phrase phrase = Phrase.of(said, lines.tongue());
    if (!yields.line(phrase)) {
      yields.amount(phrase, 0);
    }
    entries.add(new SourceLine(1, said, 0, said.length()), Page.Kind.YIELD);
  }
}
