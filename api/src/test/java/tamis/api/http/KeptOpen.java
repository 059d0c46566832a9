package tamis.api.http;

import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/**
 * A connection that is kept open and reads whole answers, with as little work as can be: where
 * clients share the machine with what they measure, they should not be what is measured.
 */
public final class KeptOpen implements AutoCloseable {
  private final Socket socket;
  private final InputStream in;
  private final OutputStream out;

  public KeptOpen(int port) throws IOException {
    socket = new Socket("127.0.0.1", port);
    socket.setTcpNoDelay(true);
    in = new BufferedInputStream(socket.getInputStream(), 16_384);
    out = socket.getOutputStream();
  }

  /** Sends a whole request and waits for the whole answer. */
  public Sent ask(byte[] request) throws IOException {
    out.write(request);
    String status = line();
    if (!status.startsWith("HTTP/1.1 20")) {
      throw new IOException("answered " + status);
    }
    var headers = new ArrayList<String>();
    int length = -1;
    for (String line = line(); !line.isEmpty(); line = line()) {
      headers.add(line);
      if (line.regionMatches(true, 0, "content-length:", 0, 15)) {
        length = Integer.parseInt(line.substring(15).strip());
      }
    }
    headers.removeIf(line -> line.regionMatches(true, 0, "date:", 0, 5));
    return new Sent(headers, length < 0 ? chunks() : in.readNBytes(length));
  }

  private byte[] chunks() throws IOException {
    var body = new ByteArrayOutputStream();
    for (int size = size(); size > 0; size = size()) {
      body.writeBytes(in.readNBytes(size));
      line();
    }
    line();
    return body.toByteArray();
  }

  private int size() throws IOException {
    return Integer.parseInt(line(), 16);
  }

  private String line() throws IOException {
    var line = new ByteArrayOutputStream(64);
    for (int one = in.read(); one != '\n'; one = in.read()) {
      if (one < 0) {
        throw new IOException("the other side closed");
      }
      if (one != '\r') {
        line.write(one);
      }
    }
    return line.toString(StandardCharsets.ISO_8859_1);
  }

  @Override
  public void close() {
    try {
      socket.close();
    } catch (IOException already) {
      throw new UncheckedIOException(already);
    }
  }

  /** An answer as it stands on the wire. */
  public record Sent(List<String> headers, byte[] body) {
    String type() {
      return headers.stream()
          .filter(line -> line.toLowerCase(Locale.ROOT).startsWith("content-type:"))
          .findFirst()
          .orElseThrow()
          .substring("content-type:".length())
          .strip();
    }
  }
}
