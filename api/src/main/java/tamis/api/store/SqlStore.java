package tamis.api.store;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.function.Consumer;
import java.util.function.Function;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.engine.trial.Observation;

/** Documents in a database. What was answered is on its disk. */
public final class SqlStore implements Store {
  private final Database database;
  private final Clock clock;
  private final DocumentCache cache = new DocumentCache();
  private final SqlReads reads = new SqlReads(cache);
  private final Counters counters;
  private volatile StoreShelf shelf = new StoreShelf(this, -1, -1);

  SqlStore(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
    this.counters = new Counters(database, database.dialect() == Dialect.POSTGRESQL);
  }

  /**
   * A store in a file, which is made if it is not there.
   *
   * @throws UnusableStore if it cannot be used
   */
  public static SqlStore sqlite(Path file, Clock clock) {
    return new SqlStore(SqliteFile.open(file), clock);
  }

  /**
   * A store in a PostgreSQL database, whose tables are made if they are not there.
   *
   * @throws UnusableStore if it cannot be used
   */
  public static SqlStore postgresql(
      String url, @Nullable String user, @Nullable String password, Clock clock) {
    return new SqlStore(PostgresServer.open(url, user, password), clock);
  }

  Database database() {
    return database;
  }

  @Override
  public long revision() {
    return counters.now().revision();
  }

  @Override
  public long trials() {
    return counters.now().trials();
  }

  @Override
  public @Nullable Stored read(Kind kind, String id) {
    return database.<@Nullable Stored>read(handle -> reads.newest(handle, kind, id));
  }

  @Override
  public @Nullable Stored read(Kind kind, String id, int number) {
    return database.<@Nullable Stored>read(handle -> reads.ofNumber(handle, kind, id, number));
  }

  @Override
  public @Nullable Stored readAsOf(Kind kind, String id, long revision) {
    return database.<@Nullable Stored>read(handle -> reads.asOf(handle, kind, id, revision));
  }

  @Override
  public List<Stored> revisions(Kind kind, String id) {
    return database.read(handle -> reads.all(handle, kind, id));
  }

  @Override
  public Listed list(Kind kind, String words, int limit, @Nullable String after) {
    return database.read(handle -> Search.list(handle, kind, words, limit, after));
  }

  @Override
  public Collection<String> users(Kind kind, String formula) {
    return database.read(handle -> reads.found(handle, kind, Findings.use(formula)));
  }

  @Override
  public Collection<String> ingredientsNamed(String folded) {
    return database.read(handle -> reads.found(handle, Kind.INGREDIENT, Findings.name(folded)));
  }

  @Override
  public Stored create(Document document, String author) {
    return written(
        document.kind(),
        handle -> {
          long revision = SqlWrites.next(handle, document.kind());
          @Nullable Integer number = SqlWrites.create(handle, document);
          if (number == null) {
            throw StoreFaults.exists(document.kind(), document.id());
          }
          Uses.refuseMissing(this, document);
          return kept(
              handle, document.kind(), document.id(), number, revision, author, null, document);
        });
  }

  @Override
  public Stored replace(Document document, int expected, String author) {
    return changed(document.kind(), document.id(), document, expected, author, handle -> {});
  }

  @Override
  public Stored replaceTrial(Document trial, int expected, int seen, String author) {
    String id = trial.id();
    return changed(
        Kind.TRIAL,
        id,
        trial,
        expected,
        author,
        handle -> {
          int came = reads.countObservations(handle, id, expected);
          if (came != seen) {
            throw StoreFaults.moreObserved(id, came, seen);
          }
        });
  }

  @Override
  public void delete(Kind kind, String id, int expected, String author) {
    changed(kind, id, null, expected, author, handle -> {});
  }

  private Stored changed(
      Kind kind,
      String id,
      @Nullable Document after,
      int expected,
      String author,
      Consumer<Handle> check) {
    @Nullable Stored before =
        read(kind, id, expected); // it never changes: no need to hold others up
    return written(
        kind,
        handle -> {
          long revision = SqlWrites.next(handle, kind);
          @Nullable Integer number = SqlWrites.change(handle, kind, id, after, expected);
          if (number == null || before == null) {
            throw StoreFaults.notCurrent(kind, id, reads.newest(handle, kind, id), expected);
          }
          check.accept(handle);
          if (after == null) {
            refuseIfUsed(kind, id);
          } else {
            Uses.refuseMissing(this, after);
          }
          return kept(handle, kind, id, number, revision, author, before.document(), after);
        });
  }

  private Stored kept(
      Handle handle,
      Kind kind,
      String id,
      int number,
      long revision,
      String author,
      @Nullable Document before,
      @Nullable Document after) {
    var stored = new Stored(id, number, revision, Instant.now(clock), author, after);
    SqlWrites.row(handle, kind, stored);
    Findings.update(handle, kind, id, before, after);
    return stored;
  }

  private Stored written(Kind kind, Function<Handle, Stored> work) {
    Stored stored = database.write(work);
    if (stored.document() != null) {
      cache.put(stored.number(), stored.document());
    }
    reached(kind, stored.revision());
    return stored;
  }

  private void reached(Kind kind, long revision) {
    counters.reached(
        kind.hasOwnCount() ? new Counters.At(0, revision) : new Counters.At(revision, 0));
  }

  /** Nobody else writes at this moment, so that what is read here holds until the end. */
  private void refuseIfUsed(Kind kind, String id) {
    List<String> users = kind == Kind.FORMULA ? Uses.now(this, id) : List.of();
    if (!users.isEmpty()) {
      throw StoreFaults.inUse(kind, id, users);
    }
  }

  @Override
  public List<Observed> observations(String trial, int number) {
    return database.read(handle -> reads.observations(handle, trial, number));
  }

  @Override
  public Observed observe(String trial, Observation given, String author) {
    try {
      Observed observed = database.write(handle -> observed(handle, trial, given, author));
      reached(Kind.TRIAL, observed.revision());
      return observed;
    } catch (Known known) {
      return known.observed;
    }
  }

  private Observed observed(Handle handle, String trial, Observation given, String author) {
    long revision = SqlWrites.next(handle, Kind.TRIAL);
    @Nullable Stored stored = reads.newest(handle, Kind.TRIAL, trial);
    if (stored == null) {
      throw StoreFaults.notCurrent(Kind.TRIAL, trial, null, 0);
    }
    int number = stored.number();
    @Nullable Observed known =
        Trials.known(
            stored,
            given,
            reads.observation(handle, trial, number, given.id()),
            reads.countObservations(handle, trial, number));
    if (known != null) {
      throw new Known(known);
    }
    var observed = new Observed(given, revision, Instant.now(clock), author, true);
    SqlWrites.observation(handle, trial, number, observed);
    return observed;
  }

  /** Undoes the transaction: there is nothing to write. */
  private static final class Known extends RuntimeException {
    private static final long serialVersionUID = 1L;

    @SuppressWarnings("serial") // never serialised: it does not leave this class
    private final Observed observed;

    Known(Observed observed) {
      super("", null, false, false);
      this.observed = observed;
    }
  }

  /** All is other than it was; what was known of it is forgotten. */
  void loaded() {
    cache.clear();
    counters.begin();
    shelf = new StoreShelf(this, -1, -1);
  }

  @Override
  public StoreShelf shelf() {
    var at = counters.now();
    StoreShelf latest = shelf;
    if (!latest.isAt(at.revision(), at.trials())) {
      latest = new StoreShelf(this, at.revision(), at.trials());
      shelf = latest;
    }
    return latest;
  }

  @Override
  public void close() {
    database.close();
  }
}
