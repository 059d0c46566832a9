package tamis.api.http;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.concurrent.Callable;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** A stream as it goes over the wire: callers who wait, fall silent, drip, or read no more. */
class StreamsOnTheWireTest {
  private static final String TYPE = "application/x-ndjson";
  private static final String STREAM = "/v1/calculations/conversion/stream";

  private static final String HEAD =
      "POST " + STREAM + " HTTP/1.1\r\nHost: localhost\r\nContent-Type: " + TYPE + "\r\n";
  private static final String IN_CHUNKS = HEAD + "Transfer-Encoding: chunked\r\n\r\n";

  private static Served served;

  @BeforeAll
  static void open() {
    served = Served.with().lineBytes(10_000).sender(Duration.ofSeconds(2)).open();
  }

  @AfterAll
  static void close() {
    served.close();
  }

  private static String kilograms(int count) {
    return "{\"quantity\":\"" + count + " kg\",\"unit\":\"g\"}";
  }

  private static String chunk(String text) {
    return Integer.toHexString(text.length()) + "\r\n" + text + "\r\n";
  }

  private static String head(Raw raw) throws IOException {
    var head = new StringBuilder();
    for (var line = raw.line(); line != null && !line.isEmpty(); line = raw.line()) {
      head.append(line).append('\n');
    }
    return head.toString();
  }

  /** Next line of the body that is no length of a chunk and not between two of them. */
  private static String answer(Raw raw) throws IOException {
    var line = raw.line();
    while (line != null && !line.startsWith("{")) {
      line = raw.line();
    }
    return line;
  }

  @Test
  void whoever_sends_a_line_and_waits_gets_its_answer() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(1) + "\n"));
      assertThat(head(raw)).startsWith("HTTP/1.1 200").contains("Transfer-Encoding: chunked");
      assertThat(answer(raw)).contains("\"amount\":1000");
      raw.send(chunk(kilograms(2) + "\n"));
      assertThat(answer(raw)).contains("\"amount\":2000");
      raw.send("0\r\n\r\n");
      assertThat(answer(raw)).isNull();
    }
  }

  @Test
  void whoever_sends_a_little_at_a_time_is_not_taken_for_a_slow_reader() throws Exception {
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(1) + "\n"));
      head(raw);
      assertThat(answer(raw)).contains("\"amount\":1000");
      for (int i = 0; i < 5; i++) {
        Thread.sleep(1_200);
        raw.send(chunk(kilograms(2) + "\n"));
        assertThat(answer(raw)).contains("\"amount\":2000");
      }
    }
  }

  @Test
  void whoever_falls_silent_is_told_on_the_line_and_cut() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(1) + "\n" + kilograms(2).substring(0, 9)));
      head(raw);
      assertThat(answer(raw)).contains("\"amount\":1000");
      assertThat(answer(raw)).startsWith("{\"line\":2,").contains("\"status\":408");
      assertThat(answer(raw)).isNull();
    }
  }

  /** One letter now and then never is silence, and would hold a place of 50 for ever. */
  @Test
  void whoever_drips_is_told_on_the_line_and_cut() throws Exception {
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(1) + "\n"));
      head(raw);
      assertThat(answer(raw)).contains("\"amount\":1000");
      var told = CompletableFuture.supplyAsync(() -> unchecked(() -> answer(raw)));
      for (int i = 0; i < 30 && !told.isDone(); i++) {
        raw.send(chunk(" "));
        Thread.sleep(1_000);
      }
      assertThat(told).isDone();
      assertThat(told.get()).startsWith("{\"line\":2,").contains("\"status\":408");
    }
  }

  private static <T> T unchecked(Callable<T> call) {
    try {
      return call.call();
    } catch (Exception failed) {
      throw new IllegalStateException(failed);
    }
  }

  @Test
  void chunks_that_are_none_are_told_on_the_line() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(1) + "\n") + "nonsense\r\n");
      head(raw);
      assertThat(answer(raw)).contains("\"amount\":1000");
      assertThat(answer(raw)).startsWith("{\"line\":2,").contains("\"status\":400");
    }
  }

  @Test
  void the_caller_is_told_to_go_on() throws IOException {
    try (var raw = new Raw(served.port())) {
      raw.send(HEAD + "Expect: 100-continue\r\nTransfer-Encoding: chunked\r\n\r\n");
      assertThat(raw.line()).isEqualTo("HTTP/1.1 100 Continue");
      raw.line();
      raw.send(chunk(kilograms(1)) + "0\r\n\r\n");
      assertThat(head(raw)).startsWith("HTTP/1.1 200");
      assertThat(answer(raw)).contains("\"amount\":1000");
    }
  }

  /** A line of 1 GB must cost time only: the heap that a whole one would take is not there. */
  @Test
  void a_line_of_a_gigabyte_takes_no_memory() throws IOException {
    var part = "x".repeat(1 << 20).getBytes(StandardCharsets.US_ASCII);
    var memory = ManagementFactory.getMemoryMXBean();
    try (var socket = new Socket("127.0.0.1", served.port())) {
      socket.setSoTimeout(30_000);
      var end = "\n" + kilograms(1);
      long length = 1024L * part.length + end.length();
      var out = socket.getOutputStream();
      out.write(
          (HEAD + "Connection: close\r\nContent-Length: " + length + "\r\n\r\n")
              .getBytes(StandardCharsets.US_ASCII));
      System.gc();
      long before = memory.getHeapMemoryUsage().getUsed();
      long most = 0;
      for (int i = 0; i < 1024; i++) {
        out.write(part);
        if (i % 128 == 127) {
          System.gc();
          most = Math.max(most, memory.getHeapMemoryUsage().getUsed());
        }
      }
      out.write(end.getBytes(StandardCharsets.US_ASCII));
      var answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
      assertThat(answer).contains("{\"line\":1,", "too-large", "\"amount\":1000");
      assertThat(most - before).isLessThan(50L << 20);
    }
  }

  /** Its answers fill what the wire holds; then it is cut after the write timeout. */
  @Test
  void a_reader_that_stops_reading_is_cut_and_others_are_served() throws Exception {
    var lines = (kilograms(1) + "\n").repeat(1_000).getBytes(StandardCharsets.US_ASCII);
    try (var socket = new Socket()) {
      socket.setReceiveBufferSize(4_096);
      socket.connect(new InetSocketAddress("127.0.0.1", served.port()));
      var sending =
          new Thread(
              () -> {
                try {
                  var out = socket.getOutputStream();
                  long length = 1_000_000L * lines.length;
                  out.write(
                      (HEAD + "Content-Length: " + length + "\r\n\r\n")
                          .getBytes(StandardCharsets.US_ASCII));
                  for (int i = 0; i < 1_000_000; i++) {
                    out.write(lines);
                  }
                } catch (IOException cut) {
                  Thread.currentThread().interrupt();
                }
              });
      sending.start();
      sending.join(20_000);
      assertThat(sending.isAlive()).as("still waited for").isFalse();
    }
    try (var raw = new Raw(served.port())) {
      raw.send(IN_CHUNKS + chunk(kilograms(2)) + "0\r\n\r\n");
      head(raw);
      assertThat(answer(raw)).contains("\"amount\":2000");
    }
  }
}
