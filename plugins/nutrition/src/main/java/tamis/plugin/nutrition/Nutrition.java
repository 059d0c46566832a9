package tamis.plugin.nutrition;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.formula.FormulaRef;
import tamis.engine.formula.To;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Mass;
import tamis.engine.record.Described;
import tamis.engine.record.ExactlyOne;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;

/**
 * What a formula feeds: the sum over its ingredients in the mass that is left after baking, and the
 * figures as a label prints them (21 CFR 101.9(c); EU 1169/2011 with the rounding guidance of
 * 2012). What no document tells is not zero: each figure carries the part of the mass it is known
 * for, and a label with a gap says so.
 */
public final class Nutrition implements Calculation<Nutrition.Input, Nutrition.Result> {

  /** Of which formula, for whose label; or figures to round. */
  @ExactlyOne({"formula", "declare"})
  public record Input(
      @Described(value = "Id, id@revision, or the whole document", example = "sultana-scones")
          @Nullable FormulaRef formula,
      @Described(
              value = "Figures to print as they are, of a serving (US) or of 100 g (EU, UK)",
              optional = true)
          Map<LabelFigure, Double> declare,
      @Described("How much to make; as written if left out") @Nullable To to,
      @Described(value = "Whose label is meant", example = "US") LabelRegime regime,
      @Described(value = "Finished mass of a portion", moreThan = "0 g", example = "55 g")
          @Nullable Mass portion,
      @Described(
              value = "Mass lost in baking and cooling, in place of the formula's own losses",
              lessThan = "100 %",
              example = "10 %")
          @Nullable Fraction loss,
      @Described(
              value = "US: category of the amount customarily eaten, which makes the serving",
              example = "scones",
              most = 40)
          @Nullable String category,
      @Described("How it is cooked: what is left of vitamins and minerals; all if left out")
          @Nullable Cooking cooking,
      @Described("How alcohol in it is cooked: what is left of it; all if left out")
          @Nullable AlcoholCooking alcohol,
      @Described(
              value = "What cooking leaves, where you know better than the tables",
              optional = true,
              most = 200)
          List<Retention> retention,
      @Described("US: energy by 4-4-9, or by each food's own factors") @Nullable EnergyWay energy) {

    public Input {
      Faults faults = new Faults();
      declare.forEach(
          (figure, value) -> {
            if (!(value >= 0 && value <= 1e6)) {
              faults.add(
                  new Fault(
                      FaultCode.OUT_OF_BOUNDS,
                      "/declare/" + figure,
                      String.valueOf(value),
                      "0 to 1000000",
                      figure + " must be 0 to 1000000, was " + value));
            }
          });
      faults.refuseIfAny();
    }
  }

  /** Which factors energy is counted with. */
  public enum EnergyWay {
    GENERAL,
    SPECIFIC
  }

  /** What it feeds. */
  public record Result(
      @Described("Whose label it is") LabelRegime regime,
      @Described(value = "Finished mass of the batch", unit = "g") @Nullable Double finishedGrams,
      @Described(value = "Finished mass of a portion", unit = "g") @Nullable Double portionGrams,
      @Described("Portions in the batch") @Nullable Double portions,
      @Described("The serving by the amount customarily eaten") @Nullable Serving serving,
      @Described("Of 100 g of the finished product, not rounded") @Nullable Figures per100g,
      @Described("Of a portion, not rounded") @Nullable Figures perPortion,
      @Described("Of the whole batch, not rounded") @Nullable Figures perBatch,
      @Described(value = "What `declared` is of", example = "100 g") String declaredFor,
      @Described("As the regime prints it: US of a serving, EU and UK of 100 g")
          Map<LabelFigure, Declared> declared,
      @Described("EU and UK: of a portion") Map<LabelFigure, Declared> declaredPerPortion,
      @Described(value = "The label line by line, in its order", table = true)
          List<LabelLine> label,
      @Described("The part of the mass at mixing for which each figure is known")
          Map<LabelFigure, Double> known,
      @Described("Mandatory figures that are known in part or not at all, and by whose silence")
          List<Gap> gaps,
      @Described("Figures that are known in part only (JSON Pointers)") List<String> incomplete) {}

  /** One line of a label. */
  public record LabelLine(
      @Described("The figure") LabelFigure figure,
      @Described("As the regime calls it") String name,
      @Described("As printed; not known if nothing is") String text,
      @Described("EU and UK: of a portion, as printed") @Nullable String portionText,
      @Described(value = "Part of the daily value or reference intake", unit = "%")
          @Nullable Double percent,
      @Described("Whether the label must show it") boolean mandatory) {}

  /** A mandatory figure with a hole in it. */
  public record Gap(
      @Described("The figure") LabelFigure figure,
      @Described("The part of the mass for which it is known") double known,
      @Described("Ingredients whose documents do not tell it") List<String> ingredients) {}

  @Override
  public String name() {
    return "nutrition";
  }

  @Override
  public String title() {
    return "What a formula feeds, and the figures as a label prints them";
  }

  @Override
  public Class<Input> input() {
    return Input.class;
  }

  @Override
  public Class<Result> result() {
    return Result.class;
  }

  @Override
  public List<Input> examples() {
    return List.of(
        ofScones(LabelRegime.EUROPEAN_UNION, null),
        ofScones(LabelRegime.UNITED_STATES, "scones"),
        new Input(
            null,
            Map.of(LabelFigure.FAT, 12.4, LabelFigure.SATURATES, 0.09),
            null,
            LabelRegime.EUROPEAN_UNION,
            null,
            null,
            null,
            null,
            null,
            List.of(),
            null));
  }

  private static Input ofScones(LabelRegime regime, @Nullable String category) {
    return new Input(
        Examples.scones(),
        Map.of(),
        null,
        regime,
        null,
        null,
        category,
        Cooking.BAKED,
        null,
        List.of(),
        null);
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    Result result =
        input.formula() == null
            ? LabelLines.ofGiven(input, notes)
            : new LabelOf(input, input.formula(), kitchen, notes).result();
    Cautions.of("nutrition", notes);
    return Answer.of(result, notes);
  }
}
