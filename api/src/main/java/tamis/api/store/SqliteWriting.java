package tamis.api.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConnection;
import tamis.api.store.Outcome.Why;

/**
 * Keeps documents in a file. Everything is checked before anything of a write is written, so that a
 * refused one has nothing to undo. Statements are kept prepared for as long as the connection
 * lives; only one thread is here at a time, since there is one connection that writes.
 */
final class SqliteWriting implements Writing {
  private static final String HEAD = "SELECT number, live FROM head WHERE kind = ? AND id = ?";
  private static final String FIRST =
      "INSERT INTO head (number, title, words, kind, id, live) VALUES (?, ?, ?, ?, ?, 1)";
  private static final String NEXT =
      "UPDATE head SET number = ?, title = ?, words = ?, live = 1 WHERE kind = ? AND id = ?";
  private static final String ROW =
      "INSERT INTO document (kind, id, number, revision, written, author, body)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?)";
  private static final String CAME =
      "SELECT count(*) FROM observation WHERE trial = ? AND number = ?";
  private static final String LIVE =
      "SELECT 1 FROM head WHERE kind = 'formula' AND id = ? AND live = 1";
  private static final String UNFILED =
      "INSERT INTO unfiled (kind, id, words, gone) VALUES (?, ?, ?, ?) ON CONFLICT (kind, id)"
          + " DO UPDATE SET words = excluded.words, gone = unfiled.gone || excluded.gone";
  private static final String ADDED =
      "INSERT INTO finding (kind, term, id) VALUES (?, ?, ?) ON CONFLICT DO NOTHING";

  private @Nullable Connection prepared;
  private final Map<String, PreparedStatement> statements = new HashMap<>();

  @Override
  public List<Outcome> keep(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    var sqlite = connection.unwrap(SQLiteConnection.class);
    prepareOn(sqlite);
    // Else the driver tries to begin and commit after each of these statements.
    sqlite.getConnectionConfig().setAutoCommit(false);
    try {
      run("BEGIN IMMEDIATE");
      List<Outcome> outcomes = kept(writes, moment);
      run("COMMIT");
      return outcomes;
    } catch (SQLException | RuntimeException | Error failed) {
      undo(failed);
      throw failed;
    } finally {
      sqlite.getConnectionConfig().setAutoCommit(true);
    }
  }

  private void undo(Throwable failed) throws SQLException {
    forget(); // the driver closes a statement that fails
    try {
      run("ROLLBACK");
    } catch (SQLException undone) {
      failed.addSuppressed(undone);
      forget();
      if (!isOver(undone)) {
        end();
      }
    }
  }

  /** SQLite has undone it itself, as when the disk is full. */
  private static boolean isOver(SQLException undone) {
    return String.valueOf(undone.getMessage()).contains("no transaction is active");
  }

  /** What was begun and cannot be undone must not be committed by whoever comes next. */
  private void end() throws SQLException {
    Objects.requireNonNull(prepared).close();
    prepared = null;
  }

  private void forget() {
    for (PreparedStatement statement : statements.values()) {
      try {
        statement.close();
      } catch (SQLException closed) {
        // with its connection, and so is done
      }
    }
    statements.clear();
  }

  private List<Outcome> kept(List<Write> writes, Instant moment) throws SQLException {
    Counters.At at;
    try (var row = query(Counters.At.SELECTED)) {
      row.next();
      at = Counters.At.of(row);
    }
    List<Outcome> outcomes = new ArrayList<>();
    for (Write write : writes) {
      Outcome outcome = checked(write, moment);
      if (outcome.why() == Why.KEPT) {
        at = at.after(write.kind(), moment);
        long revision = write.kind().hasOwnCount() ? at.trials() : at.revision();
        outcome = new Outcome(Why.KEPT, outcome.number() + 1, revision, moment, null);
        keep(write, outcome);
      }
      outcomes.add(outcome);
    }
    run(
        "UPDATE store SET revision = ?, trials = ?, written = ?",
        at.revision(),
        at.trials(),
        SqlWrites.text(at.written()));
    return outcomes;
  }

  /** Whether it can be kept; with the newest number that is there, 0 for none. */
  private Outcome checked(Write write, Instant moment) throws SQLException {
    int number = 0;
    boolean live = false;
    try (var row = query(HEAD, write.kind().word(), write.id())) {
      if (row.next()) {
        number = row.getInt(1);
        live = row.getInt(2) == 1;
      }
    }
    if (write.expected() == 0 ? live : !live) {
      return new Outcome(live ? Why.EXISTS : Why.ABSENT, number, 0, moment, null);
    }
    if (write.expected() != 0 && number != write.expected()) {
      return new Outcome(Why.STALE, number, 0, moment, null);
    }
    int came = write.seen() == Write.ANY ? Write.ANY : came(write);
    if (came != write.seen()) {
      return new Outcome(Why.OBSERVED, came, 0, moment, null);
    }
    for (String used : write.uses()) {
      try (var row = query(LIVE, used)) {
        if (!row.next()) {
          return new Outcome(Why.GONE, number, 0, moment, used);
        }
      }
    }
    return new Outcome(Why.KEPT, number, 0, moment, null);
  }

  private int came(Write write) throws SQLException {
    try (var row = query(CAME, write.id(), write.expected())) {
      row.next();
      return row.getInt(1);
    }
  }

  private void keep(Write write, Outcome outcome) throws SQLException {
    String kind = write.kind().word();
    int number = outcome.number();
    run(number == 1 ? FIRST : NEXT, number, write.title(), write.words(), kind, write.id());
    run(
        ROW,
        kind,
        write.id(),
        number,
        outcome.revision(),
        outcome.written().toString(),
        write.author(),
        write.body());
    if (write.isReworded()) {
      run(UNFILED, kind, write.id(), write.words(), write.gone());
    }
    for (String term : write.added()) {
      run(ADDED, kind, term, write.id());
    }
  }

  private void prepareOn(Connection connection) {
    if (!connection.equals(prepared)) {
      forget();
      prepared = connection;
    }
  }

  private PreparedStatement statement(String sql, @Nullable Object... values) throws SQLException {
    PreparedStatement statement = statements.get(sql);
    if (statement == null) {
      statement = Objects.requireNonNull(prepared).prepareStatement(sql);
      statements.put(sql, statement);
    }
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
    return statement;
  }

  private ResultSet query(String sql, @Nullable Object... values) throws SQLException {
    return statement(sql, values).executeQuery();
  }

  private void run(String sql, @Nullable Object... values) throws SQLException {
    statement(sql, values).executeUpdate();
  }
}
