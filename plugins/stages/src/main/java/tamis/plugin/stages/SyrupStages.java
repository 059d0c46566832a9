package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.engine.record.Described;
import tamis.engine.table.BadTable;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * The stages of cooked sugar at sea level, by each authority. Some temperatures lie between two
 * stages and belong to neither.
 */
final class SyrupStages {
  static final Table TABLE =
      TableReader.read(
          SyrupStages.class,
          "/tamis/plugin/stages/sugar-stages.csv",
          "Temperatures of the stages of cooked sugar at sea level, by three authorities",
          List.of("stage", "authority"));

  /** Finer than any thermometer in a pan. */
  private static final double TOLERANCE = 0.05;

  private static final Map<StageAuthority, List<Step>> STEPS = steps();

  private SyrupStages() {}

  private record Step(SyrupStage stage, double low, double high, Row row) {}

  /** What an authority says of a temperature. */
  public record Verdict(
      @Described("Whose table") StageAuthority authority,
      @Described("The stage, unless it lies between two") @Nullable SyrupStage stage,
      @Described("The two it lies between") List<String> between) {}

  /** The stage at this temperature at sea level; where two meet, the further cooked one. */
  static Verdict at(StageAuthority authority, double celsius) {
    @Nullable Step below = null;
    @Nullable Step found = null;
    @Nullable Step above = null;
    for (Step step : STEPS.getOrDefault(authority, List.of())) {
      if (celsius >= step.low() - TOLERANCE && celsius <= step.high() + TOLERANCE) {
        found = step;
      } else if (celsius > step.high()) {
        below = step;
      } else if (above == null) {
        above = step;
      }
    }
    if (found != null) {
      return new Verdict(authority, found.stage(), List.of());
    }
    String from = below == null ? "boiling" : below.stage().toString();
    String to = above == null ? "burnt" : above.stage().toString();
    return new Verdict(authority, null, List.of(from, to));
  }

  /** What all of them say. */
  static List<Verdict> all(double celsius) {
    List<Verdict> verdicts = new ArrayList<>();
    for (StageAuthority authority : StageAuthority.values()) {
      verdicts.add(at(authority, celsius));
    }
    return verdicts;
  }

  /** The row of a stage, or null if the authority does not have it. */
  static @Nullable Row row(StageAuthority authority, SyrupStage stage) {
    return TABLE.row(stage + "/" + authority);
  }

  private static Map<StageAuthority, List<Step>> steps() {
    Map<StageAuthority, List<Step>> steps = new EnumMap<>(StageAuthority.class);
    for (Row row : TABLE.rows()) {
      double low = row.number("low_c");
      double high = row.number("high_c");
      if (low > high) {
        throw new BadTable(TABLE.name(), row.line(), "low_c", "is above high_c");
      }
      StageAuthority authority = StageAuthority.valueOf(constant(row.text("authority")));
      SyrupStage stage = SyrupStage.valueOf(constant(row.text("stage")));
      steps.computeIfAbsent(authority, a -> new ArrayList<>()).add(new Step(stage, low, high, row));
    }
    return steps;
  }

  private static String constant(String text) {
    return text.toUpperCase(Locale.ROOT).replace('-', '_');
  }
}
