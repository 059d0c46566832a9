package tamis.api.store;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;

/** Keeps documents in one kind of database. */
interface Writing {
  /**
   * Runs one transaction for all; when it returns, what was kept is on the disk. A write that
   * cannot be kept leaves no trace and does not touch the others.
   *
   * @param connection that commits by itself
   * @return an outcome for each, in their order
   * @throws SQLException if nothing was kept
   */
  List<Outcome> keep(Connection connection, List<Write> writes, Instant moment) throws SQLException;
}
