package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.plugin.intake.line.Amount;
import tamis.plugin.intake.line.Measure;
import tamis.plugin.intake.line.MeasureReader;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.page.Page;
import tamis.plugin.intake.word.Figures;

/** Tells a line as it was read, in the words of the answer. */
final class LineAnswer {
  private LineAnswer() {}

  /**
   * @param resolved whether it is in the formula
   * @param candidates ids that may be meant
   */
  static IntakeLine line(
      Page.Entry entry, ReadLine read, Drafted drafted, boolean resolved, List<String> candidates) {
    @Nullable Measure measure = read.measure();
    @Nullable Measure size = measure == null ? null : measure.size();
    return new IntakeLine(
        entry.source().number(),
        entry.source().text(),
        entry.source().start(),
        entry.source().end(),
        measure == null || measure.amount().isUnreadable() ? null : value(measure.amount()),
        measure == null ? null : measure.unit(),
        read.asNeeded() ? true : null,
        size == null ? null : other(size),
        read.also().stream().map(LineAnswer::other).toList(),
        measure == null ? List.of() : measure.manner().stream().map(LineAnswer::manner).toList(),
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
        value(measure.amount()), measure.unit() == null ? "each" : measure.unit());
  }

  /** A number, or a range as an object. */
  private static Object value(Amount amount) {
    if (!amount.isRange()) {
      return Figures.rounded(amount.low());
    }
    Map<String, Object> range = new LinkedHashMap<>();
    range.put("low", Figures.rounded(amount.low()));
    range.put("high", Figures.rounded(amount.high()));
    return range;
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
}
