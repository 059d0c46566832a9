package tamis.api.http;

import io.javalin.Javalin;
import io.javalin.config.JavalinConfig;
import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import io.javalin.http.HttpResponseException;
import io.javalin.util.JavalinBindException;
import java.util.concurrent.atomic.AtomicBoolean;
import org.eclipse.jetty.server.HttpConfiguration;
import org.eclipse.jetty.server.HttpConnectionFactory;
import org.eclipse.jetty.server.ServerConnector;
import tamis.api.plugin.Plugins;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.api.version.Versions;

/** The door, open. */
public final class Server implements AutoCloseable {
  /** Room for headers besides the address: what browsers and proxies send is under 8 KB. */
  private static final int HEADER_BYTES = 16 * 1024;

  /** How long calls that are under way may take when the program is stopped. */
  private static final long MILLIS_TO_END = 5_000;

  /** How long a connection may stay silent then: most are kept open for a next request. */
  private static final long MILLIS_TO_CLOSE_IDLE = 200;

  /** A reader slower than this holds a thread for nothing. */
  static final int LEAST_BYTES_A_SECOND = 512;

  private final Javalin javalin;
  private final ServerSettings settings;

  /** A signal and the end of the program both close it, maybe at once. */
  private final AtomicBoolean closing = new AtomicBoolean();

  /** The address cannot be served at. */
  public static final class AddressTaken extends RuntimeException {
    private static final long serialVersionUID = 1L;

    AddressTaken(String address, Exception cause) {
      super("cannot serve at " + address + ": the address is in use, or not this machine's", cause);
    }
  }

  private Server(Javalin javalin, ServerSettings settings) {
    this.javalin = javalin;
    this.settings = settings;
  }

  /**
   * @throws AddressTaken if nothing can be served at the address of the settings
   */
  public static Server start(
      ServerSettings settings, Store store, Plugins plugins, Versions versions) {
    var metrics = new Metrics();
    var log = RequestLog.of(settings.log()).and(metrics);
    var door = new Door(settings, log);
    var routes = routes(settings, store, plugins, versions, metrics);
    var javalin =
        Javalin.create(
            config -> {
              plain(config);
              jetty(config, settings, new JettyErrors(settings.queryBytes(), log));
              config.router.mount(
                  routing -> {
                    routes.register(routing, door);
                    routing.exception(
                        HttpResponseException.class,
                        (thrown, call) -> door.serve(call, "-", Server::nothingHere));
                  });
            });
    try {
      javalin.start(settings.host(), settings.port());
    } catch (JavalinBindException taken) {
      throw new AddressTaken(settings.host() + ":" + settings.port(), taken);
    }
    // Not before the start: a server that could not start cannot end calls either, and says so.
    javalin.jettyServer().server().setStopTimeout(MILLIS_TO_END);
    return new Server(javalin, settings);
  }

  static Routes routes(
      ServerSettings settings, Store store, Plugins plugins, Versions versions, Metrics metrics) {
    var routes = new Routes();
    var kitchens = new Kitchens(store, plugins, settings.limits());
    var bodies = new Bodies(settings);
    new CalculationHandler(plugins, kitchens, bodies, settings).register(routes);
    new StreamHandler(plugins, kitchens, settings).register(routes);
    new FormulaHandler(store, kitchens, bodies, settings).register(routes);
    new IngredientHandler(store, kitchens, bodies, settings).register(routes);
    new PriceHandler(store, bodies, settings).register(routes);
    var trialKind = DocumentKind.ofShop(Kind.TRIAL, TrialHandler.PATH);
    var trials = new TrialDocuments(trialKind, store, kitchens, bodies, settings);
    new TrialHandler(trials, new DocumentLists(trialKind, store, settings)).register(routes);
    new ObservationHandler(trials).register(routes);
    new TableHandler(plugins, settings).register(routes);
    new HealthHandler(plugins, store, versions).register(routes);
    new DocsHandler(plugins, versions).register(routes);
    metrics.register(routes);
    return routes;
  }

  private static Reply nothingHere(Context call) {
    if (call.method() == HandlerType.OPTIONS) {
      return Reply.empty(204); // a spreadsheet asks this first and gives up on a refusal
    }
    throw Problems.noSuchPath(call.path());
  }

  private static void plain(JavalinConfig config) {
    config.showJavalinBanner = false;
    config.startupWatcherEnabled = false;
    config.http.disableCompression();
  }

  private static void jetty(JavalinConfig config, ServerSettings settings, JettyErrors errors) {
    config.jetty.modifyHttpConfiguration(http -> heads(http, settings));
    config.jetty.modifyServletContextHandler(context -> context.setErrorHandler(errors));
    config.jetty.modifyServer(server -> server.setErrorHandler(errors));
    config.jetty.addConnector(
        (server, http) -> {
          var connector = new ServerConnector(server, new HttpConnectionFactory(http));
          connector.setHost(settings.host());
          connector.setPort(settings.port());
          connector.setIdleTimeout(settings.sender().toMillis());
          connector.setShutdownIdleTimeout(MILLIS_TO_CLOSE_IDLE);
          connector.addBean(new SlowHeads(connector, settings.sender()));
          return connector;
        });
  }

  private static void heads(HttpConfiguration http, ServerSettings settings) {
    http.setSendServerVersion(false);
    http.setRequestHeaderSize(settings.queryBytes() + HEADER_BYTES);
    http.setMinResponseDataRate(LEAST_BYTES_A_SECOND);
  }

  public int port() {
    return javalin.port();
  }

  public String address() {
    var host = settings.host().contains(":") ? "[" + settings.host() + "]" : settings.host();
    return "http://" + host + ":" + port();
  }

  /** Waits until it is closed. */
  public void join() {
    try {
      javalin.jettyServer().server().join();
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public void close() {
    if (!closing.getAndSet(true)) {
      javalin.stop();
    }
  }
}
