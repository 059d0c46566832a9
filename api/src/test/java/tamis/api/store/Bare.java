package tamis.api.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.util.concurrent.atomic.AtomicLong;
import javax.sql.DataSource;

/**
 * What our writes are measured against: the same row by bare JDBC and nothing else, committed by
 * itself, on a connection that a store has set up as it does its own.
 */
final class Bare implements AutoCloseable {
  private static final AtomicLong INSERTED = new AtomicLong();
  private static final String TABLE =
      "CREATE TABLE IF NOT EXISTS bare (kind TEXT NOT NULL, id TEXT NOT NULL,"
          + " number INTEGER NOT NULL, revision BIGINT NOT NULL, written TEXT NOT NULL,"
          + " author TEXT NOT NULL, body TEXT, PRIMARY KEY (kind, id, number))";

  private final Connection pooled;
  private final PreparedStatement row;

  Bare(DataSource pool) throws SQLException {
    this.pooled = pool.getConnection();
    Connection raw = pooled.unwrap(Connection.class);
    try (var statement = raw.createStatement()) {
      statement.execute(TABLE);
    }
    this.row = raw.prepareStatement("INSERT INTO bare VALUES (?, ?, ?, ?, ?, ?, ?)");
  }

  void insert(String id, String json) throws SQLException {
    long number = INSERTED.incrementAndGet();
    row.setString(1, "formula");
    row.setString(2, id);
    row.setInt(3, (int) number);
    row.setLong(4, number);
    row.setString(5, Instant.now().toString());
    row.setString(6, "local");
    row.setString(7, json);
    row.executeUpdate();
  }

  @Override
  public void close() throws SQLException {
    row.close();
    pooled.close();
  }
}
