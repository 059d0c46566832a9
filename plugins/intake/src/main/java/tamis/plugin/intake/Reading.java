package tamis.plugin.intake;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.line.LineReader;
import tamis.plugin.intake.name.Larder;
import tamis.plugin.intake.page.Page;
import tamis.plugin.intake.page.PageReader;
import tamis.plugin.intake.page.RecipeReader;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Language;
import tamis.plugin.intake.word.Tongue;

/** Reads a source in the language that fits it best, and puts the answer together. */
final class Reading {
  private static final int LINES_TO_TELL_LANGUAGE = 200;

  private final Source source;
  private final Intake.Input input;
  private final Kitchen kitchen;
  private final Notes notes;
  private final Larder larder;
  private final Map<String, String> corrections = new LinkedHashMap<>();

  private Reading(Source source, Intake.Input input, Kitchen kitchen, Notes notes) {
    this.source = source;
    this.input = input;
    this.kitchen = kitchen;
    this.notes = notes;
    this.larder = new Larder(kitchen);
    for (Correction correction : input.corrections()) {
      corrections.put(correction.text().strip(), correction.instead().strip());
    }
  }

  static Reading of(Source source, Intake.Input input, Kitchen kitchen, Notes notes) {
    return new Reading(source, input, kitchen, notes);
  }

  Intake.Result result() {
    Language language = language();
    @Nullable Measures measures = input.measures() == null ? language.measures() : input.measures();
    Page page = page(language, measures, Integer.MAX_VALUE);
    Written written = new Written(source, language, measures, kitchen, notes);
    Intake.Result result = withDocument(written.result(page));
    @Nullable Formula formula = result.formula();
    if (formula == null) {
      return result;
    }
    return new Intake.Result(
        Remade.of(formula, input.quantities(), input.to(), kitchen),
        result.lines(),
        result.unresolved(),
        result.passages(),
        result.language(),
        result.understood(),
        result.recipes());
  }

  /** The formula that came along, if the lines still say what it says. */
  private Intake.Result withDocument(Intake.Result result) {
    @Nullable Formula document = document();
    if (document == null) {
      return result;
    }
    return new Intake.Result(
        document,
        result.lines(),
        List.of(),
        result.passages(),
        result.language(),
        document.lines().size(),
        result.recipes());
  }

  private @Nullable Formula document() {
    if (source.document() == null || !corrections.isEmpty()) {
      return null;
    }
    try {
      Formula document =
          new RecordReader(kitchen, Limits.usual()).read(Formula.class, source.document());
      List<String> lines = source.lines().stream().map(piece -> piece.source().text()).toList();
      if (RecipeJson.ingredients(document).equals(lines)) {
        return document;
      }
      notes.remark(
          "document-left",
          "/formula",
          "the formula that came along does not say what the lines say; the lines are read");
    } catch (Refusal refusal) {
      notes.remark(
          "document-left",
          "/formula",
          "the formula that came along cannot be read, so the lines are: "
              + refusal.faults().get(0).message());
    }
    return null;
  }

  private Language language() {
    @Nullable Language said = input.language();
    if (said == null && source.tag() != null) {
      said = Language.ofTag(source.tag());
    }
    if (said != null) {
      return said.at(input.measures());
    }
    Language best = Language.EN.at(input.measures());
    Page english = page(best, input.measures(), LINES_TO_TELL_LANGUAGE);
    if (english.understood() == english.ingredients() && english.understood() > 0) {
      return best;
    }
    long most = english.understood();
    for (Language other : Tongue.others()) {
      long understood = page(other, other.measures(), LINES_TO_TELL_LANGUAGE).understood();
      if (understood > most) {
        most = understood;
        best = other;
      }
    }
    if (!best.code().equals("en")) {
      notes.remark(
          "language-assumed",
          "/language",
          "the source is read as " + best + ", by its words; say `language` for another");
    }
    return best;
  }

  private Page page(Language language, @Nullable Measures measures, int most) {
    LineReader lines = new LineReader(language, larder, measures == null ? Measures.US : measures);
    if (!source.isPage()) {
      return new RecipeReader(lines, corrections).read(source, most);
    }
    List<SourceLine> page = source.page();
    return new PageReader(lines, corrections).read(page.subList(0, Math.min(most, page.size())));
  }
}
