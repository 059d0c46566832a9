package tamis.api;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;
import java.util.function.UnaryOperator;

/** A web server on a port of its own: the shop's page, or answers that a test makes up. */
final class ShopPage implements AutoCloseable {
  private static final Path FORM = Path.of("../demo-data/order-form/index.html");

  private final HttpServer server;
  private final CopyOnWriteArrayList<String> asked = new CopyOnWriteArrayList<>();

  private interface Answer {
    void to(HttpExchange call) throws IOException;
  }

  private ShopPage(Answer answer) throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.setExecutor(
        Executors.newCachedThreadPool(
            task -> {
              Thread thread = new Thread(task, "page");
              thread.setDaemon(true);
              return thread;
            }));
    server.createContext("/", answer::to);
    server.start();
  }

  /** The form as it lies in the demo, calling this API. */
  static ShopPage form(String api, UnaryOperator<String> changes) throws IOException {
    String html = Files.readString(FORM).replace("http://127.0.0.1:7070", api);
    byte[] bytes = changes.apply(html).getBytes(StandardCharsets.UTF_8);
    return new ShopPage(
        call -> {
          call.getResponseHeaders().add("Content-Type", "text/html; charset=utf-8");
          send(call, 200, bytes);
        });
  }

  /** An API that gives every quote this answer. */
  static ShopPage api(int status, String json) throws IOException {
    ShopPage[] page = new ShopPage[1];
    page[0] =
        new ShopPage(
            call -> {
              call.getResponseHeaders().add("Access-Control-Allow-Origin", "*");
              call.getResponseHeaders().add("Access-Control-Allow-Headers", "content-type");
              call.getResponseHeaders().add("Access-Control-Expose-Headers", "Retry-After");
              call.getResponseHeaders().add("Content-Type", "application/json");
              call.getResponseHeaders().add("Retry-After", "7");
              if (call.getRequestMethod().equals("POST")) {
                byte[] body = call.getRequestBody().readAllBytes();
                page[0].asked.add(new String(body, StandardCharsets.UTF_8));
              }
              send(call, status, json.getBytes(StandardCharsets.UTF_8));
            });
    return page[0];
  }

  private static void send(HttpExchange call, int status, byte[] bytes) throws IOException {
    boolean preflight = call.getRequestMethod().equals("OPTIONS");
    call.sendResponseHeaders(preflight ? 204 : status, preflight ? -1 : bytes.length);
    if (!preflight) {
      call.getResponseBody().write(bytes);
    }
    call.close();
  }

  /** Bodies that were posted. */
  CopyOnWriteArrayList<String> asked() {
    return asked;
  }

  String origin() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
