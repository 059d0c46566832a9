package tamis.plugin.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.Line;
import tamis.engine.ingredient.Ingredient;
import tamis.engine.ingredient.IngredientRef;
import tamis.engine.ingredient.PieceMass;
import tamis.engine.ingredient.Weighing;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Measures;
import tamis.engine.quantity.Quantity;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Units;
import tamis.plugin.intake.line.Measure;
import tamis.plugin.intake.line.MeasureReader;
import tamis.plugin.intake.line.ReadLine;
import tamis.plugin.intake.name.Found;
import tamis.plugin.intake.word.Figures;
import tamis.plugin.intake.word.Phrase;

/**
 * A line of the formula made of a line that was read; or why none can be made of it.
 *
 * @param line of the formula, or null
 * @param grams what it weighs, or null
 * @param whys why it is not in the formula; empty if it is
 * @param told what should be known although it is in the formula
 * @param loose what it takes off the confidence
 */
record Drafted(
    @Nullable Line line,
    @Nullable Double grams,
    List<String> whys,
    List<String> told,
    double loose) {

  /** How far a weight in brackets may be from the one by volume before it is told. */
  private static final double TOLERANCE = 0.15;

  /** How many times one may be of the other before neither is believed. */
  private static final double FAR = 1.5;

  /** How warm a food is changes its weight by less than the spread of its density. */
  private static final Set<String> TEMPERS = Set.of("cold", "warm", "hot", "lukewarm", "boiling");

  /** Makes lines of a formula, by the measures of the page. */
  record Bench(@Nullable Measures measures, Notes notes, String pointer) {

    Drafted draft(ReadLine read, @Nullable String stage) {
      List<String> whys = new ArrayList<>(read.doubts());
      @Nullable Found found = read.found();
      if (found != null && found.why() != null) {
        whys.add(found.why());
      }
      if (!whys.isEmpty() || found == null || found.ingredient() == null) {
        return new Drafted(null, null, whys, List.of(), 0);
      }
      Ingredient ingredient = found.ingredient();
      Making making = new Making(this, read, ingredient, new ArrayList<>(), new ArrayList<>());
      return making.drafted(stage);
    }
  }

  /** One line in the making. */
  private record Making(
      Bench bench, ReadLine read, Ingredient ingredient, List<String> whys, List<String> told) {

    Drafted drafted(@Nullable String stage) {
      @Nullable String state = state();
      @Nullable String quantity = read.asNeeded() ? "as needed" : quantity();
      if (quantity == null) {
        return new Drafted(null, null, whys, told, 0);
      }
      Quantity parsed = Quantity.parse(quantity);
      boolean volume = parsed.isMeasured() && !isMass(parsed);
      @Nullable String kept = volume && state == null ? null : state;
      @Nullable Spread grams = parsed.isMeasured() ? grams(quantity, kept, whys) : null;
      if (!whys.isEmpty()) {
        return new Drafted(null, null, whys, told, 0);
      }
      if (parsed.isMeasured()) {
        remember(parsed, kept);
      }
      double loose = volume && state == null && hasStates() ? 0.1 : 0;
      loose += grams == null ? 0 : compared(grams, quantity, kept);
      if (!whys.isEmpty()) {
        return new Drafted(null, null, whys, told, 0);
      }
      loose += isImprecise(parsed) ? 0.1 : 0;
      Line line =
          new Line(
              IngredientRef.parse(ingredient.id()),
              null,
              parsed,
              kept,
              read.preparation().isEmpty()
                  ? null
                  : shortened(String.join("; ", read.preparation())),
              stage,
              null,
              null,
              shortened(read.text()));
      return new Drafted(line, grams == null ? null : grams.typical(), whys, told, loose);
    }

    /** The rows that the weight rests on, and whose measures were taken. */
    private void remember(Quantity quantity, @Nullable String state) {
      Notes found = new Notes();
      new Weighing(usual(), "", bench.pointer() + "/grams", found)
          .grams(quantity, ingredient, state);
      found.sources().forEach(bench.notes()::cite);
      if (bench.measures() == null && Units.standard().dependsOnMeasures(quantity.unit())) {
        bench
            .notes()
            .remark(
                "measure-assumed",
                "/measures",
                "cups, spoons and pints are taken as US measures; say `measures` for others");
      }
    }

    private static String shortened(String text) {
      return text.length() > 400 ? text.substring(0, 399) + "…" : text;
    }

    private static boolean isMass(Quantity quantity) {
      return quantity.dimension() == tamis.engine.quantity.Dimension.MASS;
    }

    private boolean isImprecise(Quantity quantity) {
      return quantity.isMeasured() && Units.standard().unit(quantity.unit(), usual()).imprecise();
    }

    private Measures usual() {
      return bench.measures() == null ? Measures.US : bench.measures();
    }

    /** A state that its mass is known for; another is work that changes little, and is told. */
    private @Nullable String state() {
      Set<String> known = ingredient.states();
      if (read.size() != null && known.contains(read.size())) {
        return read.size();
      }
      for (ReadLine.State state : read.states()) {
        if (known.contains(state.known())) {
          return state.known();
        }
      }
      return read.measuredAs() != null && known.contains(read.measuredAs())
          ? read.measuredAs()
          : null;
    }

    /** Whether the source says a state that the mass is not known for. */
    private boolean hasStates() {
      for (ReadLine.State state : read.states()) {
        if (!state.temper() && !TEMPERS.contains(state.known())) {
          weighedAsUsual(state.written());
          return true;
        }
      }
      if (read.measuredAs() != null) {
        weighedAsUsual(read.measuredAs());
      }
      return read.measuredAs() != null;
    }

    private void weighedAsUsual(String state) {
      told.add(
          "the mass of `"
              + ingredient.id()
              + "` is not known as "
              + state
              + "; it is weighed as usual");
    }

    private @Nullable String quantity() {
      @Nullable Measure measure = read.measure();
      if (measure == null) {
        whys.add("no quantity is said; write how much, or \"as needed\"");
        return null;
      }
      if (measure.size() != null) {
        double low = measure.low() * measure.size().low();
        return Figures.of(low, measure.high() * measure.size().high())
            + " "
            + measure.size().unit();
      }
      for (Measure other : read.also()) {
        boolean weight = other.unit() != null && !other.container() && isMass(other);
        if (weight && !isMass(measure)) {
          return text(other);
        }
      }
      String thing = String.valueOf(measure.unit());
      for (String manner : measure.manner()) {
        if (manner.startsWith(MeasureReader.A_SIZE)) {
          String how = manner.substring(MeasureReader.A_SIZE.length());
          whys.add("what one " + how + " " + thing + " holds is not said; write a weight");
          return null;
        }
      }
      @Nullable String piece = piece(measure);
      if (piece != null) {
        return Figures.of(measure.low(), measure.high()) + " " + piece;
      }
      if (measure.container() && Units.standard().name(String.valueOf(measure.unit())) == null) {
        for (Measure other : read.also()) {
          if (!other.container() && other.unit() != null) {
            return text(other);
          }
        }
        whys.add("what one " + measure.unit() + " holds is not said; write a weight");
        return null;
      }
      return text(measure);
    }

    /** "A yeast cake" is a cake of yeast; a package of yeast or gelatine is its packet. */
    private @Nullable String piece(Measure measure) {
      List<String> known = ingredient.pieces().stream().map(PieceMass::piece).toList();
      if ("package".equals(measure.unit()) && known.contains("envelope")) {
        return "envelope";
      }
      if (measure.unit() != null || known.contains(PieceMass.EACH)) {
        return null;
      }
      String words = Phrase.folded(read.asWritten());
      String last = words.substring(words.lastIndexOf(' ') + 1);
      @Nullable String unit = Units.standard().name(last);
      return unit != null && known.contains(unit) ? unit : null;
    }

    private boolean isMass(Measure measure) {
      return measure.unit() != null
          && Units.standard().name(measure.unit()) != null
          && Units.standard().dimension(measure.unit()) == tamis.engine.quantity.Dimension.MASS;
    }

    private static String text(Measure measure) {
      String unit = measure.unit() == null ? "each" : measure.unit();
      return Figures.of(measure.low(), measure.high()) + " " + unit;
    }

    private @Nullable Spread grams(String quantity, @Nullable String state, List<String> faults) {
      try {
        Weighing weighing = new Weighing(usual(), "", "", new Notes());
        return weighing.grams(Quantity.parse(quantity), ingredient, state);
      } catch (Refusal refusal) {
        faults.add(refusal.faults().get(0).message());
        return null;
      }
    }

    /** Compares what is said twice; tells a disagreement. */
    private double compared(Spread grams, String used, @Nullable String state) {
      double loose = 0;
      List<Measure> all = new ArrayList<>(read.also());
      if (read.measure() != null && read.measure().size() == null) {
        all.add(read.measure());
      }
      for (Measure other : all) {
        String text = text(other);
        boolean comparable =
            !text.equals(used)
                && (other.unit() == null || Units.standard().name(other.unit()) != null);
        @Nullable Spread said = comparable ? grams(text, state, new ArrayList<>()) : null;
        if (said != null && apart(grams, said)) {
          told.add(
              "`"
                  + used
                  + "` and `"
                  + text
                  + "` of `"
                  + ingredient.id()
                  + "` are not the same: "
                  + Math.round(grams.typical())
                  + " g and "
                  + Math.round(said.typical())
                  + " g");
          loose = 0.4;
          if (grams.low() > FAR * said.high() || said.low() > FAR * grams.high()) {
            whys.add("`" + used + "` and `" + text + "` are too far apart to be the same");
          }
        }
      }
      return loose;
    }

    private static boolean apart(Spread one, Spread other) {
      return one.low() > other.high() * (1 + TOLERANCE)
          || other.low() > one.high() * (1 + TOLERANCE);
    }
  }
}
