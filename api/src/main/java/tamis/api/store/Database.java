package tamis.api.store;

import com.zaxxer.hikari.HikariDataSource;
import com.zaxxer.hikari.pool.HikariPool.PoolInitializationException;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.SQLTransientConnectionException;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Connections to a database, those that write apart from those that read: a reader never waits for
 * a writer, and what a write must look up does not wait for another write.
 */
final class Database implements AutoCloseable {
  private static final Logger LOG = LoggerFactory.getLogger(Database.class);

  private final Dialect dialect;
  private final HikariDataSource readers;
  private final HikariDataSource writers;
  private final Jdbi reading;
  private final Jdbi writing;

  Database(Dialect dialect, HikariDataSource readers, HikariDataSource writers) {
    this.dialect = dialect;
    this.readers = readers;
    this.writers = writers;
    this.reading = Jdbi.create(readers);
    this.writing = Jdbi.create(writers);
  }

  Dialect dialect() {
    return dialect;
  }

  List<HikariDataSource> pools() {
    return List.of(readers, writers);
  }

  /**
   * @throws Refusal {@code store-unavailable} or {@code store-full}
   */
  <T extends @Nullable Object> T read(Function<Handle, T> work) {
    try {
      return reading.withHandle(work::apply);
    } catch (RuntimeException failed) {
      if (!isLost(failed)) {
        return told(
            () -> {
              throw failed;
            });
      }
      // The others of the pool were lost with it. To read again does no harm, and may help at once.
      pools().forEach(pool -> pool.getHikariPoolMXBean().softEvictConnections());
      return told(() -> reading.withHandle(work::apply));
    }
  }

  /** Whether a connection ended that was there before. */
  private static boolean isLost(Throwable thrown) {
    for (@Nullable Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      boolean ended =
          cause instanceof SQLException sql
              && !(cause instanceof SQLTransientConnectionException)
              && sql.getSQLState() != null
              && sql.getSQLState().matches("08...|57P0.");
      if (ended) {
        return true;
      }
    }
    return false;
  }

  /**
   * Runs one transaction; a refusal undoes it.
   *
   * @throws Refusal as {@link #read} does, or the work's own
   */
  <T extends @Nullable Object> T write(Function<Handle, T> work) {
    return told(
        () ->
            writing.withHandle(
                handle ->
                    kept(
                        handle.getConnection(),
                        connection -> transaction(connection, handle, work))));
  }

  private static <T extends @Nullable Object> T transaction(
      Connection connection, Handle handle, Function<Handle, T> work) throws SQLException {
    connection.setAutoCommit(false);
    try {
      T result = work.apply(handle);
      connection.commit();
      connection.setAutoCommit(true);
      return result;
    } catch (SQLException | RuntimeException | Error failed) {
      undo(connection, failed);
      throw failed;
    }
  }

  private static void undo(Connection connection, Throwable failed) throws SQLException {
    try {
      connection.rollback();
      connection.setAutoCommit(true);
    } catch (SQLException undone) { // and must not be committed by whoever comes next
      failed.addSuppressed(undone);
      connection.unwrap(Connection.class).close();
    }
  }

  /** Runs one transaction that answers nothing. */
  void useWriter(Consumer<Handle> work) {
    this.<@Nullable Void>write(
        handle -> {
          work.accept(handle);
          return null;
        });
  }

  /**
   * Works on a connection that writes, which commits by itself. Work that cannot undo what it began
   * closes the connection below the pool's; that undoes it, and the next writer gets another.
   *
   * @throws Refusal as {@link #read} does, or the work's own
   */
  <T extends @Nullable Object> T writer(OnConnection<T> work) {
    return told(
        () -> {
          try (Connection connection = writers.getConnection()) {
            return kept(connection, work);
          }
        });
  }

  /** Throws the connection out of the pool if it was closed below. */
  private <T extends @Nullable Object> T kept(Connection connection, OnConnection<T> work)
      throws SQLException {
    try {
      return work.run(connection);
    } finally {
      if (connection.unwrap(Connection.class).isClosed()) {
        writers.evictConnection(connection);
      }
    }
  }

  interface OnConnection<T extends @Nullable Object> {
    T run(Connection connection) throws SQLException;
  }

  private interface Work<T extends @Nullable Object> {
    T run() throws SQLException;
  }

  private <T extends @Nullable Object> T told(Work<T> work) {
    try {
      return work.run();
    } catch (Refusal refusal) {
      throw refusal;
    } catch (SQLException | RuntimeException thrown) {
      @Nullable FaultCode code = code(thrown);
      if (code == null) {
        throw thrown instanceof RuntimeException wrong ? wrong : new IllegalStateException(thrown);
      }
      LOG.warn("the store: {}", rootMessage(thrown));
      throw Refusal.of(
          code,
          code == FaultCode.STORE_FULL
              ? "the store is full; nothing was written"
              : "the store cannot be reached at this moment; try again");
    }
  }

  private @Nullable FaultCode code(Throwable thrown) {
    for (@Nullable Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      if (cause instanceof SQLTransientConnectionException
          || cause instanceof PoolInitializationException) {
        return FaultCode.STORE_UNAVAILABLE;
      }
      if (cause instanceof SQLException sql && dialect.meaning(sql) != null) {
        return dialect.meaning(sql);
      }
    }
    return null;
  }

  private static String rootMessage(Throwable thrown) {
    Throwable root = thrown;
    for (@Nullable Throwable cause = thrown; cause != null; cause = cause.getCause()) {
      root = cause;
    }
    return String.valueOf(root.getMessage()).lines().findFirst().orElse("failed");
  }

  @Override
  public void close() {
    readers.close();
    writers.close();
  }
}
