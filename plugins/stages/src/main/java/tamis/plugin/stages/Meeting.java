package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Faults;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Spread;
import tamis.engine.spi.Answer;
import tamis.engine.spi.Kitchen;
import tamis.engine.thermal.Proximates;
import tamis.engine.thermal.ThermalProperties;

/** Works out one heat balance. */
final class Meeting {
  private static final double HOT = 90;

  private final HeatBalance.Input input;
  private final Notes notes = new Notes();
  private final List<Makeup> made = new ArrayList<>();
  private final boolean counted;

  Meeting(HeatBalance.Input input, Kitchen kitchen) {
    this.input = input;
    this.counted = !input.parts().isEmpty() && input.parts().stream().allMatch(Part::isWhole);
    if (counted) {
      Faults faults = new Faults();
      for (int i = 0; i < input.parts().size(); i++) {
        Part part = input.parts().get(i);
        @Nullable Makeup found =
            faults.gather(
                "/parts/" + i,
                () ->
                    Makeup.of(
                        part.ingredient(),
                        part.composition(),
                        part.formula(),
                        part.fat(),
                        kitchen));
        if (found != null) {
          made.add(found);
        }
      }
      faults.refuseIfAny();
    }
  }

  Answer<HeatBalance.Result> answer() {
    if (input.composition() != null && input.temperature() != null) {
      return properties(input.composition(), input.temperature().celsius());
    }
    @Nullable Mixing mixing = counted ? mixing() : null;
    @Nullable Spread celsius = mixing == null ? null : mixing.celsius();
    Mixing.@Nullable Outcome outcome = mixing == null ? null : mixing.outcome(HeatModel.USUAL, 0.5);
    HeatBalance.@Nullable FatState fat = outcome == null ? null : fat(outcome.celsius());
    List<HeatBalance.Outside> out = outside();
    @Nullable Boolean within = within(celsius);
    if (outcome != null) {
      note(outcome);
    }
    HeatBalance.Result result =
        new HeatBalance.Result(
            celsius == null ? null : celsius.typical(),
            celsius == null ? null : celsius.low(),
            celsius == null ? null : celsius.high(),
            outcome == null ? List.of() : heats(outcome),
            outcome == null || input.bowl() == null ? null : outcome.bowl(),
            outcome == null || mixing == null ? null : pourLoss(outcome, mixing.hottest()),
            fat,
            spread(),
            out,
            within,
            new MeetingAdvice(input, spread(), out, celsius, fat).lines(),
            null,
            null,
            null);
    return Answer.of(result, notes);
  }

  private Answer<HeatBalance.Result> properties(Proximates made, double celsius) {
    for (String property : List.of("specificHeat", "density", "conductivity")) {
      notes.cite(
          java.util.Objects.requireNonNull(
              ThermalProperties.TABLE.row(
                  "water/" + (property.equals("specificHeat") ? "specific-heat" : property))),
          "/" + property);
    }
    HeatBalance.Result result =
        new HeatBalance.Result(
            null,
            null,
            null,
            List.of(),
            null,
            null,
            null,
            null,
            List.of(),
            null,
            List.of(),
            ThermalProperties.specificHeat(made, celsius),
            ThermalProperties.density(made, celsius),
            ThermalProperties.conductivity(made, celsius));
    return Answer.of(result, notes);
  }

  private Mixing mixing() {
    return new Mixing(input.parts(), made, input.pour(), input.bowl());
  }

  private List<HeatBalance.PartHeat> heats(Mixing.Outcome outcome) {
    List<HeatBalance.PartHeat> heats = new ArrayList<>();
    for (int i = 0; i < input.parts().size(); i++) {
      Part part = input.parts().get(i);
      double celsius = part.temperature().celsius();
      heats.add(
          new HeatBalance.PartHeat(
              part.called(i),
              part.kilograms() * 1000,
              celsius,
              outcome.heats().get(i),
              new HeatContent(made.get(i), HeatModel.USUAL).slope(celsius)));
    }
    return heats;
  }

  private HeatBalance.@Nullable PourLoss pourLoss(Mixing.Outcome outcome, int hottest) {
    Pour pour = input.pour();
    if (pour == null || outcome.arrival() == null) {
      return null;
    }
    Surface.PAN.cite(notes, "/pour");
    Surface.STREAM.cite(notes, "/pour");
    notes.estimate(
        "pour-loss",
        "/pour",
        "what pan and stream lose is taken from practice: low and high show half and twice of it;"
            + " measure one pour and compare");
    return new HeatBalance.PourLoss(
        input.parts().get(hottest).called(hottest),
        pour.minutes(),
        outcome.arrival(),
        outcome.room(),
        pour.roomCelsius(),
        Surface.PAN.transfer().typical(),
        Surface.STREAM.transfer().typical(),
        pour.streamMetres() * 1000);
  }

  private HeatBalance.@Nullable FatState fat(double celsius) {
    double milk = 0;
    double cocoa = 0;
    for (int i = 0; i < made.size(); i++) {
      double fat = input.parts().get(i).kilograms() * made.get(i).fatPercent();
      milk += fat * made.get(i).milkFat();
      cocoa += fat * made.get(i).cocoaFat();
    }
    FatKind kind = milk >= cocoa ? FatKind.MILK : FatKind.COCOA;
    @Nullable SolidFat curve = SolidFat.of(kind);
    if (milk + cocoa == 0 || curve == null) {
      return null;
    }
    curve.cite(notes, "/fat/solidPercent");
    double solid = curve.percent(celsius);
    return new HeatBalance.FatState(kind, solid, state(solid));
  }

  /** Butter works where a fifth to a quarter of its fat is solid; below a tenth it runs oily. */
  static String state(double solidPercent) {
    if (solidPercent > 40) {
      return "firm";
    }
    if (solidPercent >= 16) {
      return "plastic";
    }
    if (solidPercent >= 10) {
      return "soft";
    }
    return solidPercent > 1 ? "oily" : "melted";
  }

  private List<HeatBalance.Outside> outside() {
    List<HeatBalance.Outside> out = new ArrayList<>();
    MeetingWindow window = input.window();
    if (window == null) {
      return out;
    }
    for (int i = 0; i < input.parts().size(); i++) {
      Part part = input.parts().get(i);
      double celsius = part.temperature().celsius();
      double deviation = window.deviation(celsius);
      if (deviation != 0) {
        @Nullable Double heat =
            counted
                ? new Recovery(made.get(i), part.kilograms(), celsius, celsius - deviation)
                    .kilojoules()
                    .typical()
                : null;
        out.add(
            new HeatBalance.Outside(
                part.called(i), celsius, deviation, deviation < 0 ? "below" : "above", heat));
      }
    }
    return out;
  }

  private @Nullable Double spread() {
    double low = Double.POSITIVE_INFINITY;
    double high = Double.NEGATIVE_INFINITY;
    for (Part part : input.parts()) {
      low = Math.min(low, part.temperature().celsius());
      high = Math.max(high, part.temperature().celsius());
    }
    return input.parts().isEmpty() ? null : high - low;
  }

  private @Nullable Boolean within(@Nullable Spread celsius) {
    MeetingWindow window = input.window();
    if (window == null || celsius == null) {
      return null;
    }
    return window.deviation(celsius.typical()) == 0;
  }

  private void note(Mixing.Outcome outcome) {
    notes.cite(
        java.util.Objects.requireNonNull(ThermalProperties.TABLE.row("water/specific-heat")),
        "/celsius");
    if (made.stream().anyMatch(Makeup::syrup)) {
      Equation.SUGAR_HEAT.cite(notes, "/celsius");
    }
    if (input.bowl() != null) {
      notes.cite(input.bowl().row(), "/bowlKilojoules");
    } else {
      notes.remark(
          "no-bowl",
          "",
          "no bowl is counted; a bowl at room temperature takes a few degrees off a hot mix");
    }
    if (input.parts().stream().anyMatch(part -> part.temperature().celsius() >= HOT)
        && made.stream().anyMatch(Makeup::syrup)) {
      Cautions.hotSugar(notes, "/parts");
    }
    if (made.stream().anyMatch(Makeup::egg)) {
      Cautions.rawEgg(notes, "/parts");
      notes.remark(
          "egg-after-mixing",
          "/parts",
          String.format(
              Locale.ROOT,
              "the egg comes to about %.0f °C and begins to cool at once; what that does is worked"
                  + " out from measured times and temperatures only",
              outcome.celsius()));
    }
  }
}
