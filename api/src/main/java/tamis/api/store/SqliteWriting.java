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
  private static final String ENTERED =
      "INSERT INTO head (title, words, kind, id) VALUES (?, ?, ?, ?)";
  private static final String CHANGED =
      "UPDATE head SET title = ?, words = ? WHERE kind = ? AND id = ?";
  private static final String ROW =
      "INSERT INTO document (kind, id, number, revision, written, author, body)"
          + " VALUES (?, ?, ?, ?, ?, ?, ?)";
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
      Outcome outcome = WriteCheck.of(this::query, write, moment);
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

  private void keep(Write write, Outcome outcome) throws SQLException {
    String kind = write.kind().word();
    int number = outcome.number();
    run(
        ROW,
        kind,
        write.id(),
        number,
        outcome.revision(),
        outcome.written().toString(),
        write.author(),
        write.body());
    if (write.title() != null) {
      String entry = write.expected() == 0 ? ENTERED : CHANGED;
      run(entry, write.title(), write.words(), kind, write.id());
    }
    if (write.isReworded()) {
      run(SqlWrites.UNFILED, kind, write.id(), write.gone());
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
