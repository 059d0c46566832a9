package tamis.api.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Types;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import tamis.api.store.Outcome.Why;

/**
 * Calls the function of {@code V4.1__keep_document.sql}: one round trip with its commit, however
 * many writes there are. A group with a write that cannot be kept fails; each is then kept alone.
 */
final class PostgresWriting implements Writing {
  private static final String ONE = "SELECT keep_document(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  /** In their order, each after what the one before it wrote. */
  private static final String MANY =
      "SELECT keep_document(?, a, b, c, d, e, f, g, h, i, j, k) FROM unnest(?::text[], ?::text[],"
          + " ?::int[], ?::int[], ?::text[], ?::text[], ?::text[], ?::text[], ?::text[],"
          + " ?::text[], ?::text[]) WITH ORDINALITY w(a, b, c, d, e, f, g, h, i, j, k, place)"
          + " ORDER BY w.place";

  /** What the function takes of each write, after the moment, with its SQL type. */
  private record Part(String type, Function<Write, @Nullable Object> of) {}

  private static final List<Part> PARTS =
      List.of(
          new Part("text", write -> write.kind().word()),
          new Part("text", Write::id),
          new Part("int4", Write::expected),
          new Part("int4", Write::seen),
          new Part("text", Write::author),
          new Part("text", Write::title),
          new Part("text", Write::words),
          new Part("text", Write::body),
          new Part("text", Write::gone),
          new Part("text", write -> joined(write.added())),
          new Part("text", write -> joined(write.uses())));

  @Override
  public List<Outcome> keep(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    try {
      return writes.size() == 1
          ? keepOne(connection, writes.get(0), moment)
          : keepMany(connection, writes, moment);
    } catch (SQLException refused) {
      if (writes.size() > 1 || !isRefusal(refused)) {
        throw refused;
      }
      return List.of(checked(connection, writes.get(0), moment));
    }
  }

  /** A key is there already, or the function says so. */
  private static boolean isRefusal(SQLException thrown) {
    return String.valueOf(thrown.getSQLState()).startsWith("23");
  }

  /** Why a write was refused; if nothing is in its way by now, it is kept after what is there. */
  private static Outcome checked(Connection connection, Write write, Instant moment)
      throws SQLException {
    Outcome checked = WriteCheck.of((sql, values) -> ask(connection, sql, values), write, moment);
    return checked.why() == Why.KEPT
        ? keepOne(connection, write.after(checked.number()), moment).get(0)
        : checked;
  }

  private static ResultSet ask(Connection connection, String sql, Object... values)
      throws SQLException {
    var statement = connection.prepareStatement(sql);
    statement.closeOnCompletion();
    for (int i = 0; i < values.length; i++) {
      statement.setObject(i + 1, values[i]);
    }
    return statement.executeQuery();
  }

  /** An array of one is slower to write and to read than what it holds. */
  private static List<Outcome> keepOne(Connection connection, Write write, Instant moment)
      throws SQLException {
    try (var statement = connection.prepareStatement(ONE)) {
      statement.setString(1, moment.toString());
      for (int i = 0; i < PARTS.size(); i++) {
        @Nullable Object value = PARTS.get(i).of().apply(write);
        if (value == null) {
          statement.setNull(i + 2, Types.VARCHAR); // of a type, else the statement is read anew
        } else {
          statement.setObject(i + 2, value);
        }
      }
      return outcomes(statement, List.of(write), moment);
    }
  }

  private static List<Outcome> keepMany(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    try (var statement = connection.prepareStatement(MANY)) {
      statement.setString(1, moment.toString());
      for (int i = 0; i < PARTS.size(); i++) {
        Part part = PARTS.get(i);
        @Nullable Object[] values = writes.stream().map(part.of()).toArray();
        statement.setArray(i + 2, connection.createArrayOf(part.type(), values));
      }
      return outcomes(statement, writes, moment);
    }
  }

  private static List<Outcome> outcomes(
      PreparedStatement statement, List<Write> writes, Instant moment) throws SQLException {
    List<Outcome> outcomes = new ArrayList<>();
    try (var row = statement.executeQuery()) {
      for (Write write : writes) {
        row.next();
        outcomes.add(new Outcome(Why.KEPT, write.expected() + 1, row.getLong(1), moment, null));
      }
    }
    return outcomes;
  }

  /** No word, folded name or id has a line end. */
  private static String joined(List<String> texts) {
    return String.join("\n", texts);
  }
}
