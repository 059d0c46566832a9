package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.record.Described;
import tamis.engine.record.Limit;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Calculation;
import tamis.engine.spi.Kitchen;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * An estimate of how far measured times and temperatures reduce Salmonella in egg, from published
 * resistance; never more than seven tenfold steps, and none outside of what was measured.
 */
public final class EggLethality implements Calculation<EggLethality.Input, EggLethality.Result> {
  static final Table PASTEURISATION =
      TableReader.read(
          EggLethality.class,
          "/tamis/plugin/stages/egg-pasteurisation.csv",
          "Least temperatures and holding times of liquid egg products in a regulation",
          List.of("product", "fahrenheit"));
  private static final double MOST = 7;

  /** What was heated and what was read. */
  public record Input(
      @Described(value = "What is heated", example = "yolk") EggProduct product,
      @Described(
              value = "Part of sugar in it; 10 % for a sugared product if left out",
              example = "10 %")
          @Nullable Fraction sugar,
      @Described(
              value = "Readings in the coldest spot, in order of time",
              fewest = 2,
              limit = Limit.READINGS)
          List<TemperatureReading> readings) {
    public Input {
      Faults faults = new Faults();
      TemperatureReading.check(readings, "/readings", faults);
      @Nullable Fraction given = sugar;
      @Nullable Resistance found =
          faults.gather("", () -> Resistance.of(product, given == null ? 0 : given.value() * 100));
      if (found != null) {
        checkRange(found, readings, faults);
      }
      faults.refuseIfAny();
    }

    private static void checkRange(
        Resistance found, List<TemperatureReading> readings, Faults faults) {
      boolean any = false;
      for (int i = 0; i < readings.size(); i++) {
        double celsius = readings.get(i).temperature().celsius();
        any |= celsius >= found.lowest();
        if (celsius > found.highest()) {
          faults.add(outside(found, readings.get(i), "/readings/" + i + "/temperature"));
        }
      }
      if (!any && !readings.isEmpty()) {
        faults.add(outside(found, readings.get(0), "/readings"));
      }
    }

    private static Fault outside(Resistance found, TemperatureReading reading, String pointer) {
      String allowed = found.lowest() + " °C to " + found.highest() + " °C";
      return new Fault(
          FaultCode.OUTSIDE_RANGE,
          pointer,
          reading.temperature().toString(),
          allowed,
          "the source holds from " + allowed + "; was " + reading.temperature());
    }
  }

  /** The estimate. */
  public record Result(
      @Described(value = "Tenfold reductions, never told above 7", headline = true)
          double logReduction,
      @Described("Whether it is that or more") boolean atLeast,
      @Described("Least, by the spread of z") double low,
      @Described("Most, by the spread of z, never told above 7") double high,
      @Described(value = "Minutes that leave a tenth, at the hottest reading", unit = "min")
          double dMinutes,
      @Described(value = "Degrees for a tenfold change of that", unit = "°C") double zCelsius,
      @Described(value = "The hottest reading", unit = "°C") double hottestCelsius,
      @Described(value = "What a regulation asks of liquid egg products", table = true)
          List<Hold> pasteurisation,
      @Described("What can hurt") List<String> cautions) {}

  /** One row of the table of pasteurisation, with what was held. */
  public record Hold(
      @Described("The product of the table") String product,
      @Described(value = "Least temperature", unit = "°C") double celsius,
      @Described(value = "Least time at it", unit = "min") double minutes,
      @Described(value = "Time the readings stayed at or above it", unit = "min")
          double heldMinutes) {}

  @Override
  public String name() {
    return "egg-lethality";
  }

  @Override
  public String title() {
    return "An estimate of what heat did to Salmonella in egg, from readings";
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
        new Input(EggProduct.YOLK, null, held("60 °C", 6.2)),
        new Input(EggProduct.SUGARED_YOLK, null, held("60 °C", 3.5)));
  }

  private static List<TemperatureReading> held(String celsius, double minutes) {
    return List.of(
        new TemperatureReading(0, Thermometer.parse(celsius)),
        new TemperatureReading(minutes, Thermometer.parse(celsius)));
  }

  @Override
  public Answer<Result> calculate(Input input, Kitchen kitchen) {
    Notes notes = new Notes();
    double sugar = input.sugar() == null ? 0 : input.sugar().value() * 100;
    Resistance resistance = Resistance.of(input.product(), sugar);
    double usual = reductions(input.readings(), resistance, resistance.z());
    double one = reductions(input.readings(), resistance, resistance.zLow());
    double other = reductions(input.readings(), resistance, resistance.zHigh());
    double hottest =
        input.readings().stream().mapToDouble(r -> r.temperature().celsius()).max().orElse(0);
    notes.cite(resistance.row(), "/logReduction");
    Equation.LETHALITY.cite(notes, "/logReduction");
    notes.estimate("estimate-only", "/readings", Cautions.ESTIMATE_ONLY);
    if (input.product().isSugared() || sugar > 0) {
      notes.remark(
          "sugar-protects",
          "/sugar",
          "sugar protects: the figure measured at 10 % is taken for any sugar up to that");
    }
    if (input.readings().stream().anyMatch(r -> r.temperature().celsius() < resistance.lowest())) {
      notes.remark(
          "below-range",
          "/readings",
          "time below " + resistance.lowest() + " °C counts nothing: the source ends there");
    }
    Cautions.rawEgg(notes, "/readings");
    return Answer.of(
        new Result(
            Math.min(MOST, usual),
            usual > MOST,
            Math.min(MOST, Math.min(usual, Math.min(one, other))),
            Math.min(MOST, Math.max(usual, Math.max(one, other))),
            resistance.minutes(hottest, resistance.z()),
            resistance.z(),
            hottest,
            holds(input, sugar > 0, notes),
            List.of(Cautions.ESTIMATE_ONLY, Cautions.RAW_EGG)),
        notes);
  }

  private static double reductions(
      List<TemperatureReading> readings, Resistance resistance, double z) {
    double sum = 0;
    for (int i = 1; i < readings.size(); i++) {
      TemperatureReading before = readings.get(i - 1);
      TemperatureReading now = readings.get(i);
      sum +=
          resistance.reductions(
              now.minute() - before.minute(),
              before.temperature().celsius(),
              now.temperature().celsius(),
              z);
    }
    return sum;
  }

  private static List<Hold> holds(Input input, boolean sugar, Notes notes) {
    String kind = input.product().with(sugar).toString();
    List<Hold> holds = new ArrayList<>();
    for (Row row : PASTEURISATION.rows()) {
      if (row.text("kind").equals(kind)) {
        notes.cite(row, "/pasteurisation");
        double celsius = row.number("celsius");
        holds.add(
            new Hold(row.text("product"), celsius, row.number("minutes"), held(input, celsius)));
      }
    }
    return holds;
  }

  private static double held(Input input, double celsius) {
    double sum = 0;
    for (int i = 1; i < input.readings().size(); i++) {
      TemperatureReading before = input.readings().get(i - 1);
      TemperatureReading now = input.readings().get(i);
      double low = Math.min(before.temperature().celsius(), now.temperature().celsius());
      double high = Math.max(before.temperature().celsius(), now.temperature().celsius());
      // The table's °C are rounded from whole °F.
      double edge = celsius - 0.01;
      double part = low >= edge ? 1 : high < edge ? 0 : (high - edge) / (high - low);
      sum += part * (now.minute() - before.minute());
    }
    return sum;
  }
}
