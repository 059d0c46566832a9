package tamis.api.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import org.jspecify.annotations.Nullable;
import tamis.api.store.Outcome.Why;

/** Whether a {@link Write} can be kept, by what is there. */
final class WriteCheck {
  private static final String NEWEST =
      "SELECT number, body IS NOT NULL FROM document WHERE kind = ? AND id = ?"
          + " ORDER BY number DESC LIMIT 1";
  private static final String CAME =
      "SELECT count(*) FROM observation WHERE trial = ? AND number = ?";
  private static final String LIVE = "SELECT 1 FROM head WHERE kind = 'formula' AND id = ?";

  private WriteCheck() {}

  interface Asking {
    ResultSet ask(String sql, @Nullable Object... values) throws SQLException;
  }

  /** With the newest number that is there, 0 for none; {@code KEPT} if nothing is in its way. */
  static Outcome of(Asking asking, Write write, Instant moment) throws SQLException {
    int number = 0;
    boolean live = false;
    try (var row = asking.ask(NEWEST, write.kind().word(), write.id())) {
      if (row.next()) {
        number = row.getInt(1);
        live = row.getBoolean(2);
      }
    }
    if (write.expected() == 0 ? live : !live) {
      return new Outcome(live ? Why.EXISTS : Why.ABSENT, number, 0, moment, null);
    }
    if (write.expected() != 0 && number != write.expected()) {
      return new Outcome(Why.STALE, number, 0, moment, null);
    }
    int came = write.seen() == Write.ANY ? Write.ANY : came(asking, write);
    if (came != write.seen()) {
      return new Outcome(Why.OBSERVED, came, 0, moment, null);
    }
    for (String used : write.uses()) {
      try (var row = asking.ask(LIVE, used)) {
        if (!row.next()) {
          return new Outcome(Why.GONE, number, 0, moment, used);
        }
      }
    }
    return new Outcome(Why.KEPT, number, 0, moment, null);
  }

  private static int came(Asking asking, Write write) throws SQLException {
    try (var row = asking.ask(CAME, write.id(), write.expected())) {
      row.next();
      return row.getInt(1);
    }
  }
}
