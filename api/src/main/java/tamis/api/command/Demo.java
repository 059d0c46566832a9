package tamis.api.command;

import java.io.IOException;
import java.io.PrintWriter;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import tamis.api.plugin.Plugins;
import tamis.api.representation.CsvInput;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.api.store.Document;
import tamis.api.store.DocumentReader;
import tamis.api.store.Kind;
import tamis.api.store.Store;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.kitchen.Pantry;
import tamis.engine.price.Price;
import tamis.engine.price.PriceList;
import tamis.engine.record.Limits;
import tamis.engine.record.RecordReader;
import tamis.engine.record.References;
import tamis.engine.record.Shape;

/** Fills an empty store with the demo data, and shows what can be asked of it. */
final class Demo {
  private static final String AUTHOR = "demo";
  private static final List<String> SHOWN =
      List.of("conversion-oven-as-text.http", "scaling-layer-cake-two-tins.http");
  private static final int LONGEST_SHOWN = 600;

  private final Store store;
  private final Pantry.Fittings fittings;

  Demo(Store store, Plugins plugins) {
    this.store = store;
    this.fittings = plugins.fittings(Limits.usual());
  }

  /** Loads the demo data; a store that holds anything is left as it is. */
  void load() {
    if (store.revision() > 0) {
      return;
    }
    load(Kind.INGREDIENT, "ingredients");
    load(Kind.FORMULA, "formulas");
    load(Kind.TRIAL, "trials");
    loadPrices();
  }

  private void loadPrices() {
    var columns = List.copyOf(Shape.of(Price.class).components().keySet());
    var rows = CsvInput.rows(DemoFiles.bytes("prices.csv"), false, columns);
    var prices =
        new RecordReader(References.UNCHECKED, fittings.limits(), true, false)
            .read(PriceList.class, Map.of("prices", rows));
    store.create(Document.of(prices), AUTHOR);
  }

  /** Documents that name others wait until those are there. */
  private void load(Kind kind, String folder) {
    var waiting = new LinkedHashMap<String, @Nullable Object>();
    for (var file : DemoFiles.in(folder)) {
      waiting.put(file, StrictJson.tree(DemoFiles.bytes(folder + "/" + file), JsonLimits.usual()));
    }
    int before = Integer.MAX_VALUE;
    while (!waiting.isEmpty() && waiting.size() < before) {
      before = waiting.size();
      waiting.entrySet().removeIf(entry -> isKept(kind, entry.getValue()));
    }
    if (!waiting.isEmpty()) {
      throw new IllegalStateException("the demo names what it does not hold: " + waiting.keySet());
    }
  }

  private boolean isKept(Kind kind, @Nullable Object tree) {
    try {
      var reader = new DocumentReader(new Pantry(store.shelf(), fittings), fittings.limits());
      store.create(reader.read(kind, tree, null), AUTHOR);
      return true;
    } catch (Refusal refusal) {
      if (refusal.faults().stream().anyMatch(f -> f.code() != FaultCode.UNKNOWN_FORMULA)) {
        throw refusal;
      }
      return false;
    }
  }

  /** Prints requests with their answers. */
  static void show(String address, PrintWriter out) {
    var client = HttpClient.newHttpClient();
    for (var file : SHOWN) {
      out.println();
      show(
          Request.of(new String(DemoFiles.bytes("requests/" + file), StandardCharsets.UTF_8)),
          address,
          client,
          out);
    }
    out.println();
    out.flush();
  }

  private static void show(Request request, String address, HttpClient client, PrintWriter out) {
    out.println(request.verb() + " " + address + request.path());
    if (!request.body().isEmpty()) {
      out.println(request.body());
    }
    try {
      var answer = client.send(request.to(address), BodyHandlers.ofString()).body();
      out.println(
          "→ "
              + (answer.length() <= LONGEST_SHOWN
                  ? answer
                  : answer.substring(0, LONGEST_SHOWN) + " …"));
    } catch (IOException unanswered) {
      out.println("→ no answer: " + unanswered.getMessage());
    } catch (InterruptedException stopped) {
      Thread.currentThread().interrupt();
    }
  }

  /** A request as it stands in a file of the demo: line, headers, empty line, body. */
  record Request(String verb, String path, Map<String, String> headers, String body) {
    static Request of(String text) {
      String[] parts = text.strip().split("\r?\n\r?\n", 2);
      String[] lines = parts[0].split("\r?\n", -1);
      String[] first = lines[0].split(" ", 3);
      var headers = new LinkedHashMap<String, String>();
      for (int i = 1; i < lines.length; i++) {
        String[] header = lines[i].split(":\\s*", 2);
        headers.put(header[0], header[1]);
      }
      return new Request(first[0], first[1], headers, parts.length > 1 ? parts[1].strip() : "");
    }

    HttpRequest to(String address) {
      var request =
          HttpRequest.newBuilder(URI.create(address + path))
              .method(
                  verb, body.isEmpty() ? BodyPublishers.noBody() : BodyPublishers.ofString(body));
      headers.forEach(request::header);
      return request.build();
    }
  }
}
