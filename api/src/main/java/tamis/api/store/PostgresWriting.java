package tamis.api.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/**
 * Calls the function of {@code V1.1__keep_documents.sql}: one round trip, however many writes there
 * are.
 */
final class PostgresWriting implements Writing {
  private static final String KEEP =
      "SELECT why, of_number, at_revision, about"
          + " FROM keep_documents(?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

  @Override
  public List<Outcome> keep(Connection connection, List<Write> writes, Instant moment)
      throws SQLException {
    try (var statement = connection.prepareStatement(KEEP)) {
      int trials = (int) writes.stream().filter(write -> write.kind().hasOwnCount()).count();
      statement.setString(1, moment.toString());
      statement.setInt(2, writes.size() - trials);
      statement.setInt(3, trials);
      texts(statement, 4, writes, write -> write.kind().word());
      texts(statement, 5, writes, Write::id);
      array(statement, 6, "int4", writes, Write::expected);
      array(statement, 7, "int4", writes, Write::seen);
      texts(statement, 8, writes, Write::author);
      texts(statement, 9, writes, Write::title);
      texts(statement, 10, writes, Write::words);
      texts(statement, 11, writes, Write::body);
      array(statement, 12, "bool", writes, Write::isReworded);
      texts(statement, 13, writes, Write::gone);
      texts(statement, 14, writes, write -> joined(write.added()));
      texts(statement, 15, writes, write -> joined(write.uses()));
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

  private static void texts(
      PreparedStatement statement, int place, List<Write> writes, Function<Write, Object> part)
      throws SQLException {
    array(statement, place, "text", writes, part);
  }

  private static void array(
      PreparedStatement statement,
      int place,
      String type,
      List<Write> writes,
      Function<Write, Object> part)
      throws SQLException {
    Object[] values = writes.stream().map(part).toArray();
    statement.setArray(place, statement.getConnection().createArrayOf(type, values));
  }
}
