package tamis.plugin.timeline;

import java.util.List;
import java.util.Locale;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Bounds;
import tamis.engine.formula.StageTarget;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** How something that is ready too early is held, by what it is or by where it stands. */
final class Holding {
  static final Table TABLE =
      TableReader.read(
          Holding.class,
          "/tamis/plugin/timeline/holding.csv",
          "How a stage that is early is held, by kind of target or by station",
          List.of("what"));

  private Holding() {}

  static String advice(Task task, double minutes, Notes notes, String pointer) {
    Row row = row(task);
    notes.cite(row, pointer);
    String length = Bounds.plain(Math.ceil(minutes * 10) / 10);
    @Nullable String care = row.textOrNull("care");
    return row.text("advice") + ": " + length + " min" + (care == null ? "" : "; " + care);
  }

  private static Row row(Task task) {
    @Nullable StageTarget target = task.target();
    @Nullable Row found = null;
    if (target != null && target.kind() != null) {
      found = TABLE.row(target.kind().name().toLowerCase(Locale.ROOT).replace('_', '-'));
    }
    if (found == null && task.station() != null) {
      found = TABLE.row(Stations.key(task.station()));
    }
    return Objects.requireNonNull(found == null ? TABLE.row("other") : found);
  }
}
