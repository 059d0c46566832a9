package tamis.api.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Calls the function of {@code V3.1__keep_document.sql}: one round trip with its commit, however
 * many writes there are.
 */
final class PostgresWriting implements Writing {
  private static final String ANSWER = "SELECT k.why, k.of_number, k.at_revision, k.about FROM ";

  private static final String ONE =
      ANSWER + "keep_document(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?) k";

  /** In their order, each after what the one before it wrote. */
  private static final String MANY =
      ANSWER
          + "unnest(?::text[], ?::text[], ?::int[], ?::int[], ?::text[], ?::text[], ?::text[],"
          + " ?::text[], ?::bool[], ?::text[], ?::text[], ?::text[]) WITH ORDINALITY"
          + " w(a, b, c, d, e, f, g, h, i, j, k, l, place)"
          + " CROSS JOIN LATERAL keep_document(?, a, b, c, d, e, f, g, h, i, j, k, l) k"
          + " ORDER BY w.place";

  /** What the function takes of each write, after the moment, with its SQL type. */
  private record Part(String type, Function<Write, Object> of) {}

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
          new Part("bool", Write::isReworded),
          new Part("text", Write::gone),
          new Part("text", write -> joined(write.added())),
          new Part("text", write -> joined(write.uses())));

  @Override
  public List<Outcome> keep(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    return writes.size() == 1
        ? keepOne(connection, writes.get(0), moment)
        : keepMany(connection, writes, moment);
  }

  /** An array of one is slower to write and to read than what it holds. */
  private static List<Outcome> keepOne(Connection connection, Write write, Instant moment)
      throws SQLException {
    try (var statement = connection.prepareStatement(ONE)) {
      statement.setString(1, moment.toString());
      for (int i = 0; i < PARTS.size(); i++) {
        statement.setObject(i + 2, PARTS.get(i).of().apply(write));
      }
      return outcomes(statement, moment);
    }
  }

  private static List<Outcome> keepMany(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    try (var statement = connection.prepareStatement(MANY)) {
      for (int i = 0; i < PARTS.size(); i++) {
        Part part = PARTS.get(i);
        Object[] values = writes.stream().map(part.of()).toArray();
        statement.setArray(i + 1, connection.createArrayOf(part.type(), values));
      }
      statement.setString(PARTS.size() + 1, moment.toString());
      return outcomes(statement, moment);
    }
  }

  private static List<Outcome> outcomes(PreparedStatement statement, Instant moment)
      throws SQLException {
    List<Outcome> outcomes = new ArrayList<>();
    try (var row = statement.executeQuery()) {
      while (row.next()) {
        outcomes.add(
            new Outcome(
                Outcome.Why.valueOf(row.getString(1)),
                row.getInt(2),
                row.getLong(3),
                moment,
                row.getString(4)));
      }
    }
    return outcomes;
  }

  /** No word, folded name or id has a line end. */
  private static String joined(List<String> texts) {
    return String.join("\n", texts);
  }
}
