package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Formula;
import tamis.engine.formula.Line;
import tamis.engine.formula.Stage;
import tamis.engine.formula.Yield;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.spi.Kitchen;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.name.NamesByLanguage;
import tamis.plugin.intake.page.Page;
import tamis.plugin.intake.page.StepReader;
import tamis.plugin.intake.source.Source;
import tamis.plugin.intake.source.SourceLine;
import tamis.plugin.intake.word.Language;
import tamis.plugin.intake.word.Phrase;
import tamis.plugin.intake.word.Tongue;

/** Writes down what was read: the formula, the lines, and what somebody must look at. */
final class Written {
  private static final int MOST_LINES = 2_000;
  private static final int MOST_STAGES = 150;
  private static final int LONGEST_NOTES = 20_000;

  private final Source source;
  private final Language language;
  private final @Nullable Measures measures;
  private final Notes notes;
  private final StepReader steps;
  private final List<IntakeLine> lines = new ArrayList<>();
  private final List<Unresolved> unresolved = new ArrayList<>();
  private final List<Passage> passages = new ArrayList<>();
  private final List<Line> formulaLines = new ArrayList<>();
  private final Map<String, Stage> stages = new LinkedHashMap<>();
  private final Map<String, String> stageOfPart = new LinkedHashMap<>();
  private final StringBuilder said = new StringBuilder();
  private @Nullable String lastStep;

  Written(
      Source source, Language language, @Nullable Measures measures, Kitchen kitchen, Notes notes) {
    this.source = source;
    this.language = language;
    this.measures = measures;
    this.notes = notes;
    this.steps = new StepReader(Tongue.of(language), kitchen.table("gas-marks"));
  }

  Intake.Result result(Page page) {
    for (Page.Entry entry : page.lines()) {
      if (entry.kind() == Page.Kind.INGREDIENT && entry.read() != null) {
        ingredient(entry, entry.read());
      } else {
        passage(entry);
      }
    }
    @Nullable Formula formula = formula(page);
    if (formula == null) {
      notes.remark(
          "no-formula",
          "/formula",
          "no line of ingredients with an amount could be read, so there is no formula");
    }
    return new Intake.Result(
        formula,
        lines,
        unresolved,
        passages,
        language.toString(),
        formulaLines.size(),
        source.recipes());
  }

  private void ingredient(Page.Entry entry, ReadLine read) {
    String pointer = "/lines/" + lines.size();
    @Nullable String stage = stageOf(entry.part());
    Drafted drafted = new Drafted.Bench(measures, notes, pointer).draft(read, stage);
    List<String> whys = new ArrayList<>(drafted.whys());
    if (drafted.line() != null && formulaLines.size() < MOST_LINES) {
      formulaLines.add(drafted.line());
    } else if (drafted.line() != null) {
      whys.add("a formula holds at most " + MOST_LINES + " lines");
    }
    List<String> candidates = read.found() == null ? List.of() : read.found().candidates();
    if (!whys.isEmpty()) {
      unresolved.add(
          new Unresolved(
              entry.source().number(), entry.source().text(), String.join("; ", whys), candidates));
    }
    if (!read.besides().isEmpty()) {
      unresolved.add(
          new Unresolved(
              entry.source().number(),
              entry.source().text(),
              String.join("; ", read.besides()),
              List.of()));
    }
    drafted.told().forEach(told -> notes.estimate("look-at", pointer, told));
    told(read, pointer);
    lines.add(LineAnswer.line(entry, read, drafted, whys.isEmpty(), candidates));
  }

  private void told(ReadLine read, String pointer) {
    if (read.found() == null) {
      return;
    }
    if (read.found().assumed() != null) {
      notes.remark(
          "name-assumed", pointer, "`" + read.asWritten() + "`: " + read.found().assumed());
    }
    tamis.engine.table.@Nullable Row row =
        NamesByLanguage.standard().rule(language, Phrase.folded(read.asWritten()));
    if (row != null) {
      notes.cite(row, pointer);
    }
  }

  private void passage(Page.Entry entry) {
    SourceLine line = entry.source();
    @Nullable String stage = null;
    if (entry.kind() == Page.Kind.STEP) {
      stage = step(line.text());
    } else if (entry.kind() == Page.Kind.NOTE) {
      note(line.text());
    }
    Passage.Kind kind = Passage.Kind.valueOf(entry.kind().name());
    passages.add(new Passage(line.number(), kind, line.text(), line.start(), line.end(), stage));
  }

  /** Makes a stage of a step, or several where the work moves on; tells the first. */
  private @Nullable String step(String text) {
    @Nullable String first = null;
    for (String part : steps.parts(text)) {
      @Nullable String id = stage(part);
      first = first == null ? id : first;
    }
    return first;
  }

  private @Nullable String stage(String text) {
    if (stages.size() >= MOST_STAGES) {
      note(text);
      return null;
    }
    StepReader.Step step = steps.read(text);
    String id = "step-" + (1 + stages.size());
    List<String> after = lastStep == null ? List.of() : List.of(lastStep);
    stages.put(id, steps.stage(id, text, step, after));
    lastStep = id;
    if (step.low() != null && step.high() != null && step.high() > step.low()) {
      notes.estimate(
          "range",
          "/passages/" + passages.size(),
          "`" + shortened(text) + "` gives a range of time; the middle is taken");
    }
    return id;
  }

  private static String shortened(String text) {
    return text.length() > 80 ? text.substring(0, 79) + "…" : text;
  }

  private void note(String text) {
    if (said.length() + text.length() < LONGEST_NOTES) {
      said.append(said.isEmpty() ? "" : "\n").append(text);
    }
  }

  /** A part of the page is a stage of the formula that its ingredients belong to. */
  private @Nullable String stageOf(@Nullable String part) {
    if (part == null || part.isBlank()) {
      return null;
    }
    @Nullable String known = stageOfPart.get(part);
    if (known != null) {
      return known;
    }
    String id = freeId(part);
    stageOfPart.put(part, id);
    stages.put(
        id,
        new Stage(
            id,
            shortened(part),
            null,
            null,
            null,
            null,
            null,
            List.of(),
            List.of(),
            null,
            null,
            null));
    return id;
  }

  private String freeId(String part) {
    String slug = Slug.of(part);
    Set<String> taken = new HashSet<>(stages.keySet());
    String id = slug;
    for (int i = 2; taken.contains(id); i++) {
      id = slug + "-" + i;
    }
    return id;
  }

  private @Nullable Formula formula(Page page) {
    boolean weighs =
        formulaLines.stream()
            .anyMatch(line -> !line.quantity().isAsNeeded() && line.quantity().high() > 0);
    if (!weighs) {
      return null;
    }
    @Nullable String title = page.title();
    String plain = title == null ? "" : title.strip();
    return new Formula(
        null,
        plain.isEmpty() ? null : plain.length() > 400 ? plain.substring(0, 400) : plain,
        measures,
        formulaLines,
        given(page),
        List.copyOf(stages.values()),
        List.of(),
        List.of(),
        List.of(),
        said.isEmpty() ? null : said.toString(),
        null);
  }

  private static @Nullable Yield given(Page page) {
    @Nullable Double portions = page.portions() == null ? null : page.portions().number();
    @Nullable Double pieces = page.pieces() == null ? null : page.pieces().number();
    if (portions == null && pieces == null) {
      return null;
    }
    try {
      return new Yield(portions, pieces, null, null, null, null, List.of(), null, null);
    } catch (Refusal unlikely) {
      return null;
    }
  }
}
