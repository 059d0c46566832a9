package tamis.plugin.timeline;

import java.util.List;
import java.util.Objects;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/** What the plan rests on, with where it comes from. */
final class Rule {
  static final Table TABLE =
      TableReader.read(
          Rule.class,
          "/tamis/plugin/timeline/timeline-rules.csv",
          "Rules that a timeline follows",
          List.of("rule"));

  private Rule() {}

  static Row criticalPath() {
    return row("critical-path");
  }

  static Row finishTogether() {
    return row("finish-together");
  }

  private static Row row(String rule) {
    return Objects.requireNonNull(TABLE.row(rule), rule);
  }
}
