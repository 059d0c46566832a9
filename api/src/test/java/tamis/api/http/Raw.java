package tamis.api.http;

import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;

/** A connection without a library between, for what no library would send. */
final class Raw implements AutoCloseable {
  private static final int LONGEST_WAIT_MILLIS = 30_000;

  private final Socket socket;

  Raw(int port) throws IOException {
    socket = new Socket("127.0.0.1", port);
    socket.setSoTimeout(LONGEST_WAIT_MILLIS);
    socket.setTcpNoDelay(true);
  }

  /** What came back. */
  record Answer(String head, String body) {
    int status() {
      return Integer.parseInt(head.split(" ", 3)[1]);
    }

    /** Header lines but for the date, which differs from one second to the next. */
    List<String> headers() {
      return head.lines()
          .skip(1)
          .filter(line -> !line.toLowerCase(Locale.ROOT).startsWith("date:"))
          .toList();
    }

    String header(String name) {
      return head.lines()
          .filter(
              line -> line.toLowerCase(Locale.ROOT).startsWith(name.toLowerCase(Locale.ROOT) + ":"))
          .map(line -> line.substring(name.length() + 1).strip())
          .findFirst()
          .orElse(null);
    }
  }

  /** Sends a whole request and reads until the other side closes. */
  static Answer ask(int port, String request) throws IOException {
    try (var raw = new Raw(port)) {
      raw.send(request);
      return raw.rest();
    }
  }

  /** Sends a request without a body on a connection of its own. */
  static Answer ask(int port, String verb, String address, String... headers) throws IOException {
    var lines = new StringBuilder(verb + " " + address + " HTTP/1.1\r\nHost: localhost\r\n");
    for (var header : headers) {
      lines.append(header).append("\r\n");
    }
    return ask(port, lines + "Connection: close\r\n\r\n");
  }

  /** Sends a body of a type on a connection of its own. */
  static Answer post(int port, String address, String type, String body) throws IOException {
    return ask(
        port,
        "POST "
            + address
            + " HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\nContent-Type: "
            + type
            + "\r\nContent-Length: "
            + body.length()
            + "\r\n\r\n"
            + body);
  }

  void send(String text) throws IOException {
    socket.getOutputStream().write(text.getBytes(StandardCharsets.ISO_8859_1));
    socket.getOutputStream().flush();
  }

  /** One line, without its end; null if the other side closed. */
  String line() throws IOException {
    var line = new StringBuilder();
    for (int next = socket.getInputStream().read(); ; next = socket.getInputStream().read()) {
      if (next < 0) {
        return line.isEmpty() ? null : line.toString();
      }
      if (next == '\n') {
        return line.toString().stripTrailing();
      }
      line.append((char) next);
    }
  }

  /** What one read gives. */
  String piece() throws IOException {
    byte[] bytes = new byte[65_536];
    int count = socket.getInputStream().read(bytes);
    return new String(bytes, 0, Math.max(count, 0), StandardCharsets.ISO_8859_1);
  }

  Answer rest() throws IOException {
    var all = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
    var parts = all.split("\r\n\r\n", 2);
    return new Answer(parts[0], parts.length > 1 ? parts[1] : "");
  }

  @Override
  public void close() throws IOException {
    socket.close();
  }
}
