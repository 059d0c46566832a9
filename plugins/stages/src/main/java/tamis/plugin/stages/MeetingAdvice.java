package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.quantity.Spread;
import tamis.engine.quantity.TemperatureDifference;

/** What to do before parts meet. */
final class MeetingAdvice {
  private final HeatBalance.Input input;
  private final double spread;
  private final List<HeatBalance.Outside> out;
  private final @Nullable Spread mixed;
  private final HeatBalance.@Nullable FatState fat;

  MeetingAdvice(
      HeatBalance.Input input,
      @Nullable Double spread,
      List<HeatBalance.Outside> out,
      @Nullable Spread mixed,
      HeatBalance.@Nullable FatState fat) {
    this.input = input;
    this.spread = spread == null ? 0 : spread;
    this.out = out;
    this.mixed = mixed;
    this.fat = fat;
  }

  List<String> lines() {
    List<String> lines = new ArrayList<>();
    for (HeatBalance.Outside part : out) {
      lines.add(one(part));
    }
    MeetingWindow window = input.window();
    @Nullable TemperatureDifference apart = window == null ? null : window.apart();
    if (apart != null && spread > apart.kelvins() + MeetingWindow.TOLERANCE) {
      lines.add(
          String.format(
              Locale.ROOT,
              "the parts are %.1f °C apart, more than %.1f °C: bring them nearer before they meet",
              spread,
              apart.kelvins()));
    }
    if (window != null && mixed != null) {
      lines.add(mixed(window, mixed.typical()));
    }
    if (fat != null && mixed != null) {
      lines.add(
          String.format(
              Locale.ROOT,
              "at %.1f °C about %.0f %% of the fat is solid: %s",
              mixed.typical(),
              fat.solidPercent(),
              fat.state()));
    }
    if (window != null && out.isEmpty() && lines.isEmpty()) {
      lines.add("all parts lie in the window: let them meet now");
    }
    return lines;
  }

  private static String one(HeatBalance.Outside part) {
    boolean cold = part.deviationCelsius() < 0;
    String heat =
        part.kilojoules() == null
            ? ""
            : String.format(Locale.ROOT, ", that is %.1f kJ", Math.abs(part.kilojoules()));
    return String.format(
        Locale.ROOT,
        "%s %s by %.1f °C%s",
        cold ? "warm" : "cool",
        part.name(),
        Math.abs(part.deviationCelsius()),
        heat);
  }

  private static String mixed(MeetingWindow window, double celsius) {
    double off = window.deviation(celsius);
    if (off == 0) {
      return String.format(Locale.ROOT, "together they come to %.1f °C, inside", celsius);
    }
    String side = off < 0 ? "below" : "above";
    return Math.abs(off) < 0.05
        ? String.format(
            Locale.ROOT, "together they come to %.2f °C, just %s the window", celsius, side)
        : String.format(
            Locale.ROOT,
            "together they come to %.1f °C, %.1f °C %s the window",
            celsius,
            Math.abs(off),
            side);
  }
}
