package tamis.api.store;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;
import tamis.engine.fault.Refusal;
import tamis.engine.trial.Observation;

/** Documents in a database. What was answered is on its disk. */
public final class SqlStore implements Store {
  private static final Counters.At NOWHERE = new Counters.At(-1, -1, null);

  private final Database database;
  private final Clock clock;
  private final DocumentCache cache = new DocumentCache();
  private final SqlReads reads = new SqlReads(cache);
  private final Counters counters;
  private final Filing filing;
  private final Writing writing;
  private final Turns turns = new Turns(this::keep);
  private volatile StoreShelf shelf = new StoreShelf(this, NOWHERE);

  SqlStore(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
    this.filing = new Filing(database);
    this.writing = database.dialect().writing();
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

  /** Files the words that wait for it, now. */
  void fileWords() {
    database.useWriter(filing::all);
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
  public boolean answers() {
    try {
      Counters.At at = database.read(Counters.At::read);
      return at.revision() >= 0;
    } catch (Refusal away) {
      return false;
    }
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
    return kept(document, null, 0, Write.ANY, author);
  }

  @Override
  public Stored replace(Document document, int expected, String author) {
    return kept(document, before(document, expected), expected, Write.ANY, author);
  }

  @Override
  public Stored replaceTrial(Document trial, int expected, int seen, String author) {
    return kept(trial, before(trial, expected), expected, seen, author);
  }

  /** It never changes: no need to hold others up while it is looked up. */
  private @Nullable Document before(Document document, int expected) {
    Kind kind = document.kind();
    @Nullable Document known = cache.known(kind, document.id(), expected);
    if (known != null) {
      return known;
    }
    @Nullable Stored before = read(kind, document.id(), expected);
    if (before == null || before.isDeleted()) {
      throw StoreFaults.notCurrent(kind, document.id(), read(kind, document.id()), expected);
    }
    return before.document();
  }

  private Stored kept(
      Document document, @Nullable Document before, int expected, int seen, String author) {
    Kind kind = document.kind();
    String id = document.id();
    Outcome outcome = turns.keep(Write.of(document, before, expected, seen, author));
    switch (outcome.why()) {
      case KEPT -> {
        var stored =
            new Stored(
                id, outcome.number(), outcome.revision(), outcome.written(), author, document);
        cache.put(stored.number(), document);
        return stored;
      }
      case EXISTS -> throw StoreFaults.exists(kind, id);
      case ABSENT -> throw StoreFaults.absent(kind, id);
      case STALE -> throw StoreFaults.stale(kind, id, outcome.number(), expected);
      case OBSERVED -> throw StoreFaults.moreObserved(id, outcome.number(), seen);
      case GONE -> throw StoreFaults.gone(String.valueOf(outcome.about()), id);
    }
    throw new IllegalStateException("no such outcome: " + outcome);
  }

  private List<Outcome> keep(List<Write> writes) {
    List<Outcome> outcomes =
        database.writer(connection -> writing.keep(connection, writes, Instant.now(clock)));
    for (int i = 0; i < outcomes.size(); i++) {
      Outcome outcome = outcomes.get(i);
      if (outcome.why() == Outcome.Why.KEPT) {
        counters.reached(writes.get(i).kind(), outcome.revision(), outcome.written());
      }
    }
    filing.came((int) writes.stream().filter(Write::isReworded).count());
    return outcomes;
  }

  @Override
  public void delete(Kind kind, String id, int expected, String author) {
    Instant moment = Instant.now(clock);
    long reached =
        database.write(
            handle -> {
              long revision = SqlWrites.next(handle, kind, moment);
              @Nullable Stored last = reads.newest(handle, kind, id);
              if (last == null || last.number() != expected || last.document() == null) {
                throw StoreFaults.notCurrent(kind, id, last, expected);
              }
              refuseIfUsed(kind, id);
              var stored = new Stored(id, expected + 1, revision, moment, author, null);
              SqlWrites.row(handle, kind, stored);
              SqlWrites.end(handle, kind, id, last.document());
              return revision;
            });
    counters.reached(kind, reached, moment);
    filing.came(1);
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
      counters.reached(Kind.TRIAL, observed.revision(), observed.written());
      return observed;
    } catch (Known known) {
      return known.observed;
    }
  }

  private Observed observed(Handle handle, String trial, Observation given, String author) {
    Instant moment = Instant.now(clock);
    long revision = SqlWrites.next(handle, Kind.TRIAL, moment);
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
    var observed = new Observed(given, revision, moment, author, true);
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
    shelf = new StoreShelf(this, NOWHERE);
  }

  @Override
  public StoreShelf shelf() {
    var at = counters.now();
    StoreShelf latest = shelf;
    if (!latest.isAt(at)) {
      var before = latest.at();
      latest = latest.at(at, kind -> counters.isSame(kind, before, at));
      shelf = latest;
    }
    return latest;
  }

  @Override
  public void close() {
    filing.close();
    database.close();
  }
}
