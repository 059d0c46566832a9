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
    lines.add(line(entry, read, drafted, whys.isEmpty(), candidates));
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

  private static IntakeLine line(
      Page.Entry entry, ReadLine read, Drafted drafted, boolean resolved, List<String> candidates) {
    @Nullable Measure measure = read.measure();
    @Nullable Measure size = measure == null ? null : measure.size();
    return new IntakeLine(
        entry.source().number(),
        entry.source().text(),
        entry.source().start(),
        entry.source().end(),
        measure == null || measure.amount().isUnreadable() ? null : Figures.value(measure.amount()),
        measure == null ? null : measure.unit(),
        read.asNeeded() ? true : null,
        size == null ? null : other(size),
        read.also().stream().map(Written::other).toList(),
        measure == null ? List.of() : measure.manner().stream().map(Written::manner).toList(),
        ingredient(read),
        candidates,
        read.asWritten(),
        state(read),
        read.preparation().isEmpty() ? null : String.join("; ", read.preparation()),
        entry.part(),
        drafted.grams(),
        confidence(read, drafted, resolved));
  }

  private static String manner(String word) {
    return word.startsWith(MeasureReader.A_SIZE)
        ? word.substring(MeasureReader.A_SIZE.length())
        : word;
  }

  private static @Nullable String ingredient(ReadLine read) {
    return read.found() == null || read.found().ingredient() == null
        ? null
        : read.found().ingredient().id();
  }

  private static @Nullable String state(ReadLine read) {
    List<String> states = new ArrayList<>();
    if (read.size() != null) {
      states.add(read.size());
    }
    read.states().forEach(state -> states.add(state.written()));
    return states.isEmpty() ? null : String.join(" ", states);
  }

  private static IntakeLine.OtherMeasure other(Measure measure) {
    return new IntakeLine.OtherMeasure(
        Figures.value(measure.amount()), measure.unit() == null ? "each" : measure.unit());
  }

  private static double confidence(ReadLine read, Drafted drafted, boolean resolved) {
    double loose = read.loose() + drafted.loose();
    if (read.found() != null) {
      loose += read.found().assumed() == null ? 0 : 0.1;
      loose += read.found().foreign() ? 0.15 : 0;
    }
    double confidence = Math.max(0.05, 1 - loose);
    if (!resolved) {
      confidence = Math.min(read.isIngredientKnown() ? 0.5 : 0.3, confidence);
    }
    return Math.rint(confidence * 100) / 100;
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
