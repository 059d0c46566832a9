package tamis.api.store;

import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.regex.Pattern;

/** Clients that write at random to a server until it is gone, and remember what it answered. */
final class KilledClients {
  private static final int CLIENTS = 6;
  private static final Pattern NEWEST = Pattern.compile("newest revision is \\\\\"([0-9]+)");
  private static final String SHARED = "all-write-this";

  /** A write that was answered; no title if it was a deletion. */
  record Answered(String id, int number, String title) {}

  /** All notes that were sent at all: what is in the store must be among them, whole. */
  final Set<String> sent = ConcurrentHashMap.newKeySet();

  final ConcurrentLinkedQueue<Answered> answered = new ConcurrentLinkedQueue<>();
  final Set<String> observed = ConcurrentHashMap.newKeySet();

  /** What the server should not have answered. */
  final ConcurrentLinkedQueue<String> wrong = new ConcurrentLinkedQueue<>();

  private final Map<String, Integer> numbers = new ConcurrentHashMap<>();
  private final AtomicInteger count = new AtomicInteger();
  private final HttpClient http = HttpClient.newHttpClient();

  /** Writes until the server answers no more; returns at once, the threads go on. */
  List<Thread> start(String address, long seed) {
    var threads = new ArrayList<Thread>();
    for (int i = 0; i < CLIENTS; i++) {
      String own = "client-" + i;
      var random = new Random(seed + i);
      var thread = new Thread(() -> write(address, own, random));
      thread.start();
      threads.add(thread);
    }
    return threads;
  }

  private void write(String address, String own, Random random) {
    try {
      while (true) {
        switch (random.nextInt(6)) {
          case 0 -> put(address, SHARED, random);
          case 1 -> delete(address, own + "-" + random.nextInt(8));
          case 2 -> observe(address);
          default -> put(address, own + "-" + random.nextInt(8), random);
        }
      }
    } catch (IOException gone) {
      // it was killed
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  private void put(String address, String id, Random random)
      throws IOException, InterruptedException {
    String title = "Cream " + count.incrementAndGet();
    String notes = title + " " + "x".repeat(random.nextInt(8_000));
    sent.add(notes);
    String body =
        "{\"title\":\""
            + title
            + "\",\"notes\":\""
            + notes
            + "\",\"lines\":[{\"ingredient\":\"egg\",\"quantity\":\"1 each\"}]}";
    int expected = numbers.getOrDefault(id, 0);
    var request = request(address, id, expected).PUT(BodyPublishers.ofString(body));
    took(id, title, http.send(request.build(), BodyHandlers.ofString()));
  }

  private void delete(String address, String id) throws IOException, InterruptedException {
    int expected = numbers.getOrDefault(id, 0);
    if (expected > 0) {
      took(
          id,
          "",
          http.send(request(address, id, expected).DELETE().build(), BodyHandlers.ofString()));
    }
  }

  private static HttpRequest.Builder request(String address, String id, int expected) {
    var request =
        HttpRequest.newBuilder(URI.create(address + "/v1/formulas/" + id))
            .header("Content-Type", "application/json");
    return expected == 0
        ? request.header("If-None-Match", "*")
        : request.header("If-Match", "\"" + expected + "\"");
  }

  private void took(String id, String title, HttpResponse<String> response) {
    int status = response.statusCode();
    if (status == 204) {
      answered.add(new Answered(id, numbers.remove(id) + 1, ""));
    } else if (status == 200 || status == 201) {
      int number =
          Integer.parseInt(response.headers().firstValue("ETag").orElseThrow().replace("\"", ""));
      answered.add(new Answered(id, number, title));
      numbers.merge(id, number, Math::max);
    } else if (status == 412 || status == 404) {
      numbers.remove(id); // somebody else was first, or the last round ended in the middle
      relearn(response, id);
    } else {
      wrong.add(status + " " + response.body());
    }
  }

  private void relearn(HttpResponse<String> response, String id) {
    var newest = NEWEST.matcher(response.body());
    if (newest.find()) {
      numbers.put(id, Integer.parseInt(newest.group(1)));
    }
  }

  private void observe(String address) throws IOException, InterruptedException {
    String id = "o" + count.incrementAndGet();
    String body =
        "{\"id\":\""
            + id
            + "\",\"at\":\"2026-04-11T08:22\",\"measure\":\"temperature\",\"value\":\"104 °C\"}";
    var request =
        HttpRequest.newBuilder(URI.create(address + "/v1/trials/killed/observations"))
            .header("Content-Type", "application/json")
            .POST(BodyPublishers.ofString(body))
            .build();
    var response = http.send(request, BodyHandlers.ofString());
    if (response.statusCode() == 201) {
      observed.add(id);
    } else {
      wrong.add(response.statusCode() + " " + response.body());
    }
  }
}
