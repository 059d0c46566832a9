package tamis.plugin.pans;

import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Fraction;
import tamis.engine.quantity.Spread;
import tamis.engine.record.Nearest;
import tamis.engine.table.Row;
import tamis.engine.table.Table;
import tamis.engine.table.TableReader;

/**
 * The part of a pan that is filled.
 *
 * @param part 0 to 1, with what is usual below and above
 * @param row of the table it rests on, or null if the caller said it
 */
record Fill(Spread part, @Nullable Row row) {
  static final Table TABLE =
      TableReader.read(
          Fill.class,
          "/tamis/plugin/pans/fills.csv",
          "How full pans are filled, by kind of batter",
          List.of("batter"));
  private static final String ANY = "any";

  /** What the caller said, else what is usual for the batter, else for any. */
  static Fill of(@Nullable Fraction said, @Nullable String batter) {
    return said == null
        ? ofBatter(batter == null ? ANY : batter)
        : new Fill(Spread.exactly(said.value()), null);
  }

  /**
   * @throws Refusal with pointer {@code /batter}
   */
  static Fill ofBatter(String batter) {
    Row row = Fill.row(TABLE, batter, "/batter", "a kind of batter");
    return new Fill(
        new Spread(row.number("low_part"), row.number("typical_part"), row.number("high_part")),
        row);
  }

  /** Says where it was found. */
  void cite(Notes notes, String place, String pointer) {
    if (row == null) {
      return;
    }
    notes.cite(row, pointer);
    if (row.key().equals(ANY)) {
      notes.estimate(
          "fill-assumed",
          place,
          "the pan is filled two thirds, as is usual where nothing is said; give `batter` or"
              + " `fill`");
    }
  }

  /** The row of a table, or a fault that names the rows there are. */
  static Row row(Table table, String key, String pointer, String what) {
    @Nullable Row row = table.row(key);
    if (row == null) {
      List<String> keys = table.rows().stream().map(Row::key).toList();
      String allowed = keys.stream().collect(Collectors.joining(", "));
      throw new Refusal(
          new Fault(
              FaultCode.NOT_ALLOWED,
              pointer,
              key,
              allowed,
              "`"
                  + key
                  + "` is not "
                  + what
                  + " that is known"
                  + Nearest.suggestion(key, keys)
                  + "; known are "
                  + allowed));
    }
    return row;
  }
}
