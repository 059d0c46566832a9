package tamis.api.http;

import io.restassured.RestAssured;
import io.restassured.specification.RequestSpecification;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import tamis.api.plugin.PluginLoader;
import tamis.api.plugin.Plugins;
import tamis.api.store.MemoryStore;
import tamis.api.version.Versions;
import tamis.engine.record.Limits;

/** A server on a free port with a store of its own; its settings are those usual in tests. */
final class Served implements AutoCloseable {
  private static final Plugins OURS = plugins(null, Duration.ofSeconds(10));

  private final Server server;

  private Served(Server server) {
    this.server = server;
  }

  static Plugins plugins(Path directory, Duration limit) {
    return PluginLoader.load(
        Served.class.getClassLoader(), directory, Versions.ofThisBuild(), limit);
  }

  static Served usual() {
    return new Settings().open();
  }

  static Settings with() {
    return new Settings();
  }

  /** Settings of a server, to be changed before it is opened. */
  static final class Settings {
    List<String> origins = List.of();
    int bodyBytes = 1 << 20;
    int lineBytes = 1 << 20;
    int queryBytes = 8 << 10;
    int nesting = 32;
    Limits limits = Limits.usual();
    Duration sender = Duration.ofSeconds(20);
    int cacheBytes = 1 << 20;
    Plugins plugins = OURS;

    Settings origins(String... allowed) {
      origins = List.of(allowed);
      return this;
    }

    Settings bodyBytes(int most) {
      bodyBytes = most;
      return this;
    }

    Settings lineBytes(int most) {
      lineBytes = most;
      return this;
    }

    Settings queryBytes(int most) {
      queryBytes = most;
      return this;
    }

    Settings nesting(int most) {
      nesting = most;
      return this;
    }

    Settings limits(Limits other) {
      limits = other;
      return this;
    }

    Settings sender(Duration patience) {
      sender = patience;
      return this;
    }

    Settings cacheBytes(int most) {
      cacheBytes = most;
      return this;
    }

    Settings plugins(Plugins other) {
      plugins = other;
      return this;
    }

    ServerSettings settings() {
      return new ServerSettings(
          "127.0.0.1",
          0,
          false,
          origins,
          bodyBytes,
          lineBytes,
          queryBytes,
          nesting,
          limits,
          sender,
          cacheBytes);
    }

    Served open() {
      return new Served(
          Server.start(
              settings(), new MemoryStore(Clock.systemUTC()), plugins, Versions.ofThisBuild()));
    }
  }

  /** A request to it; addresses are sent as they are written. */
  RequestSpecification ask() {
    return RestAssured.given().baseUri(server.address()).urlEncodingEnabled(false);
  }

  /** A request with a JSON body. */
  RequestSpecification json(String body) {
    return ask()
        .header("Content-Type", "application/json")
        .body(body.getBytes(StandardCharsets.UTF_8));
  }

  int port() {
    return server.port();
  }

  /** Puts a formula there for the first time. */
  Served holding(String id, String document) {
    json(document).header("If-None-Match", "*").put("/v1/formulas/" + id).then().statusCode(201);
    return this;
  }

  @Override
  public void close() {
    server.close();
  }
}
