package tamis.plugin.stages;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.formula.StageTarget;
import tamis.engine.record.Nearest;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** Windows by kind of stage and use, for a target that does not tell its own. */
final class StageWindows {
  static final Table TABLE =
      TableReader.read(
          StageWindows.class,
          "/tamis/plugin/stages/stage-windows.csv",
          "Windows of stages by kind and use",
          List.of("kind", "use"));

  private StageWindows() {}

  /** The row of a kind and use; without a use the first of the kind. */
  static Row row(StageTarget.Kind kind, @Nullable String use) {
    String name = kind.name().toLowerCase(Locale.ROOT).replace('_', '-');
    List<String> uses = new ArrayList<>();
    for (Row row : TABLE.rows()) {
      if (row.text("kind").equals(name)) {
        if (use == null || row.text("use").equals(use)) {
          return row;
        }
        uses.add(row.text("use"));
      }
    }
    throw Refusal.of(
        uses.isEmpty() ? FaultCode.MISSING : FaultCode.NO_SUCH_VALUE,
        uses.isEmpty() ? "/target/low" : "/use",
        uses.isEmpty()
            ? "a target of kind " + name + " needs low or high: no window is usual for it"
            : "no use `"
                + use
                + "` of "
                + name
                + "; known are "
                + String.join(", ", uses)
                + Nearest.suggestion(String.valueOf(use), uses));
  }

  static StageTarget.Measure measure(Row row) {
    return StageTarget.Measure.valueOf(
        row.text("measure").toUpperCase(Locale.ROOT).replace('-', '_'));
  }
}
