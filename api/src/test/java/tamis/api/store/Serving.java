package tamis.api.store;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.file.Path;
import java.util.Map;

/** A program that serves a directory, in a process of its own. */
public final class Serving implements AutoCloseable {
  private final ServeProcess process;

  private Serving(ServeProcess process) {
    this.process = process;
  }

  public static Serving start(Path directory) {
    return new Serving(ServeProcess.start(directory, Map.of()));
  }

  public String get(String path) throws IOException, InterruptedException {
    var request = HttpRequest.newBuilder(URI.create(process.address() + path)).build();
    return HttpClient.newHttpClient().send(request, BodyHandlers.ofString()).body();
  }

  @Override
  public void close() {
    process.close();
  }
}
