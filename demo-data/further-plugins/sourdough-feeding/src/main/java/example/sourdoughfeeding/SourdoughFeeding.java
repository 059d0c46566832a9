package example.sourdoughfeeding;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Mass;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.Temperature;
import tamis.engine.record.Described;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** What a sourdough starter is fed, what is left over, and when to expect it ripe. */
public final class SourdoughFeeding
    implements Calculation<SourdoughFeeding.Input, SourdoughFeeding.Result> {
  static final Table HOURS =
      TableReader.read(
          SourdoughFeeding.class,
          "sourdough-peak-hours.csv",
          "Hours to the peak of a starter fed 1:1:1",
          List.of("celsius"));
  static final Table FACTORS =
      TableReader.read(
          SourdoughFeeding.class,
          "sourdough-feed-factors.csv",
          "How much longer a starter fed more takes",
          List.of("flour_parts"));

  /** The starter at hand and what is wanted of it. */
  public record Input(
      @Described(value = "Starter at hand", moreThan = "0 g", atMost = "1000 kg", example = "100 g")
          Mass starter,
      @Described(
              value = "Water of the starter in percent of its flour, 100 when not given",
              unit = "%",
              atLeast = "40",
              atMost = "200",
              example = "100")
          @Nullable Double hydration,
      @Described(
              value =
                  "Feeding as starter:flour:water by mass; when only `wanted` is given, 1:2 flour and"
                      + " the water that keeps the hydration",
              fewest = 5,
              most = 40,
              example = "1:2:2")
          @Nullable String ratio,
      @Described(
              value = "Ripe starter wanted; without it all the starter is fed",
              moreThan = "0 g",
              atMost = "10000 kg",
              example = "400 g")
          @Nullable Mass wanted,
      @Described(
              value = "Temperature of the fed starter",
              atLeast = "16 °C",
              atMost = "32 °C",
              example = "25 °C")
          Temperature temperature,
      @Described(
              value = "Feedings one after the other, each when the one before is ripe; 1 when not given",
              atLeast = "1",
              atMost = "6",
              example = "1")
          @Nullable Integer feedings) {
    /** At least one of ratio and wanted. */
    public Input {
      if (ratio == null && wanted == null) {
        throw new Refusal(
            new Fault(
                FaultCode.MISSING,
                "/ratio",
                null,
                "`ratio`, `wanted` or both",
                "say the feeding (`ratio`, such as 1:2:2), the ripe starter `wanted`, or both"));
      }
    }
  }

  /** One feeding. */
  public record Feeding(
      @Described("Which feeding") int number,
      @Described(value = "Starter that is fed", unit = "g") double starterGrams,
      @Described(value = "Flour", unit = "g") double flourGrams,
      @Described(value = "Water", unit = "g") double waterGrams,
      @Described(value = "Mass after the feeding", unit = "g") double fedGrams,
      @Described(value = "Hydration after the feeding", unit = "%") double hydrationPercent,
      @Described(value = "Estimated time to the peak", unit = "h") double hours,
      @Described(value = "Earliest to look", unit = "h") double lowHours,
      @Described(value = "Latest to expect", unit = "h") double highHours) {}

  /** What to weigh and when to look. */
  public record Result(
      @Described(value = "Starter to use", unit = "g", headline = true) double starterGrams,
      @Described(value = "Flour of all feedings", unit = "g") double flourGrams,
      @Described(value = "Water of all feedings", unit = "g") double waterGrams,
      @Described(value = "Ripe starter in the end", unit = "g") double ripeGrams,
      @Described(value = "Starter left to discard", unit = "g") double discardGrams,
      @Described(value = "Hydration in the end", unit = "%") double hydrationPercent,
      @Described(value = "Estimated time to the last peak", unit = "h") double hours,
      @Described(value = "Earliest to look", unit = "h") double lowHours,
      @Described(value = "Latest to expect", unit = "h") double highHours,
      @Described(value = "Each feeding", table = true) List<Feeding> feedings) {}

  @Override
  public String name() {
    return "sourdough-feeding";
  }

  @Override
  public String title() {
    return "Feeding of a sourdough starter";
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
    Temperature warm = Temperature.ofCelsius(25);
    Mass hundred = Mass.ofGrams(100);
    return List.of(
        new Input(hundred, null, "1:2:2", null, warm, null),
        new Input(hundred, 100.0, "1:2:2", Mass.ofGrams(400), warm, 1),
        new Input(Mass.ofGrams(30), 60.0, null, Mass.ofKilograms(1), Temperature.ofCelsius(22), 3));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    double hydration = input.hydration() == null ? 100 : input.hydration();
    int count = input.feedings() == null ? 1 : input.feedings();
    Ratio ratio =
        input.ratio() == null ? new Ratio(2, 2 * hydration / 100) : Ratio.parse(input.ratio());
    if (input.ratio() == null) {
      notes.remark(
          "feeding-taken",
          "/ratio",
          String.format(
              Locale.ROOT, "no feeding was said: 1:2:%s was taken, which keeps the hydration",
              plain(ratio.water())));
    }
    double have = input.starter().grams();
    double growth = Math.pow(ratio.growth(), count);
    double use = input.wanted() == null ? have : input.wanted().grams() / growth;
    if (use > have * (1 + 1e-9)) {
      throw tooLittle(input, ratio, have, count, use);
    }
    Spread hours = hours(input.temperature().celsius(), ratio.flour(), notes);
    List<Feeding> feedings = new ArrayList<>();
    double mass = use;
    double flourIn = use / (1 + hydration / 100);
    double waterIn = use - flourIn;
    for (int number = 1; number <= count; number++) {
      double flour = mass * ratio.flour();
      double water = mass * ratio.water();
      flourIn += flour;
      waterIn += water;
      feedings.add(
          new Feeding(
              number,
              mass,
              flour,
              water,
              mass + flour + water,
              100 * waterIn / flourIn,
              hours.typical(),
              hours.low(),
              hours.high()));
      mass += flour + water;
    }
    double after = 100 * waterIn / flourIn;
    notes.estimate(
        "hours-estimate",
        "/temperature",
        "the hours are a rule of thumb for a lively wheat starter: look for the dome that begins to"
            + " flatten; a starter from the refrigerator, cold water or a cold jar take longer, and"
            + " whole grain or rye is quicker");
    if (after < 75) {
      notes.remark("stiff", "/ratio", "a stiff starter rises slower than the hours told here");
    }
    if (after > 130) {
      notes.remark(
          "thin", "/ratio", "a thin starter hardly rises: look for foam and smell, not for height");
    }
    if (ratio.flour() < 1) {
      notes.remark(
          "fed-little", "/ratio", "less flour than starter: it peaks soon and turns sour soon");
    }
    double discard = Math.max(0, have - use);
    if (discard < 1e-9 * have) {
      discard = 0;
    }
    if (use < 5) {
      notes.remark(
          "little-starter",
          "/wanted",
          "only " + plain(use) + " g of starter are used: weigh them on a fine scale");
    }
    if (discard == 0) {
      notes.remark(
          "nothing-left",
          "/starter",
          "all the starter is used: keep a spoon of the ripe starter back to go on with");
    }
    notes.caution(
        "keeping",
        "",
        "starter and discard hold raw flour: do not eat them unbaked. Throw it away when it has"
            + " mould or pink or orange streaks. Past its peak feed it or keep it at 4 °C and feed"
            + " it about once a week");
    return Answer.of(
        new Result(
            use,
            feedings.stream().mapToDouble(Feeding::flourGrams).sum(),
            feedings.stream().mapToDouble(Feeding::waterGrams).sum(),
            mass,
            discard,
            after,
            hours.typical() * count,
            hours.low() * count,
            hours.high() * count,
            feedings),
        notes);
  }

  private static Refusal tooLittle(
      Input input, Ratio ratio, double have, int count, double use) {
    double wanted = input.wanted() == null ? have : input.wanted().grams();
    int enough = (int) Math.ceil(Math.log(wanted / have) / Math.log(ratio.growth()) - 1e-9);
    return new Refusal(
        new Fault(
            FaultCode.IMPOSSIBLE,
            "/wanted",
            plain(wanted) + " g",
            "at most " + plain(have * Math.pow(ratio.growth(), count)) + " g",
            "for " + plain(wanted) + " g of ripe starter " + plain(use)
                + " g of starter are needed and there are " + plain(have) + " g"
                + (enough <= 6 ? "; " + enough + " feedings do it" : "; feed it more each time")));
  }

  private static Spread hours(double celsius, double flourParts, Notes notes) {
    Spread hours = between(HOURS, "celsius", List.of("low_h", "typical_h", "high_h"), celsius, false, notes);
    Spread factor =
        between(FACTORS, "flour_parts", List.of("low", "typical", "high"), flourParts, true, notes);
    return new Spread(
        hours.low() * factor.low(),
        hours.typical() * factor.typical(),
        hours.high() * factor.high());
  }

  private static Spread between(
      Table table, String key, List<String> columns, double at, boolean logarithmic, Notes notes) {
    List<Row> rows = table.rows();
    int upper = 1;
    while (upper < rows.size() - 1 && rows.get(upper).number(key) < at) {
      upper++;
    }
    Row a = rows.get(upper - 1);
    Row b = rows.get(upper);
    double x0 = a.number(key);
    double x1 = b.number(key);
    double share =
        logarithmic ? Math.log(at / x0) / Math.log(x1 / x0) : (at - x0) / (x1 - x0);
    if (share < 1) {
      notes.cite(a, "/hours");
    }
    if (share > 0) {
      notes.cite(b, "/hours");
    }
    double[] y = new double[3];
    for (int i = 0; i < 3; i++) {
      y[i] = a.number(columns.get(i)) + share * (b.number(columns.get(i)) - a.number(columns.get(i)));
    }
    return new Spread(y[0], y[1], y[2]);
  }

  private static String plain(double number) {
    return new java.math.BigDecimal(number)
        .setScale(number < 10 ? 1 : 0, java.math.RoundingMode.HALF_UP)
        .stripTrailingZeros()
        .toPlainString();
  }
}
