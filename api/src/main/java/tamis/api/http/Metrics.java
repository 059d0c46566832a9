package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiResponse;
import io.micrometer.core.instrument.FunctionTimer;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.binder.jvm.JvmMemoryMetrics;
import io.micrometer.core.instrument.binder.jvm.JvmThreadMetrics;
import io.micrometer.core.instrument.binder.system.ProcessorMetrics;
import io.micrometer.core.instrument.binder.system.UptimeMetrics;
import io.micrometer.prometheusmetrics.PrometheusConfig;
import io.micrometer.prometheusmetrics.PrometheusMeterRegistry;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.LongAdder;
import org.jspecify.annotations.Nullable;

/** Counts and times requests, for Prometheus. */
final class Metrics implements RequestLog {
  private static final String TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final Map<Served, Sums> sums = new ConcurrentHashMap<>();
  private @Nullable PrometheusMeterRegistry registry;

  private record Served(String verb, String route, int status) {}

  /** How many requests, and how long they took together. */
  private static final class Sums {
    final LongAdder requests = new LongAdder();
    final LongAdder nanos = new LongAdder();
    boolean registered;
  }

  void register(Routes routes) {
    routes.get("/metrics", this::read);
  }

  @OpenApi(
      path = "/metrics",
      methods = HttpMethod.GET,
      tags = "health",
      operationId = "getMetrics",
      summary = "Counts and times for Prometheus",
      description = "Requests by verb, route and status; memory, threads, processor.",
      responses =
          @OpenApiResponse(
              status = "200",
              description = "OK",
              content = @OpenApiContent(from = String.class, mimeType = "text/plain")))
  Reply read(Context call) {
    return Reply.of(200, TYPE, scraped().getBytes(StandardCharsets.UTF_8));
  }

  @Override
  public void told(String verb, String route, int status, long nanos) {
    var sum = sums.computeIfAbsent(new Served(verb, route, status), s -> new Sums());
    sum.requests.increment();
    sum.nanos.add(nanos);
  }

  private synchronized String scraped() {
    var known = registry;
    if (known == null) {
      known = opened();
      registry = known;
    }
    for (var entry : sums.entrySet()) {
      if (!entry.getValue().registered) {
        entry.getValue().registered = true;
        register(entry.getKey(), entry.getValue(), known);
      }
    }
    return known.scrape();
  }

  /** The library is only loaded for those who ask; most starts are not watched. */
  private static PrometheusMeterRegistry opened() {
    var registry = new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
    new JvmMemoryMetrics().bindTo(registry);
    new JvmThreadMetrics().bindTo(registry);
    new ProcessorMetrics().bindTo(registry);
    new UptimeMetrics().bindTo(registry);
    return registry;
  }

  private static void register(Served served, Sums sum, MeterRegistry registry) {
    FunctionTimer.builder(
            "tamis.requests", sum, s -> s.requests.sum(), s -> s.nanos.sum(), TimeUnit.NANOSECONDS)
        .description("Requests that were answered")
        .tag("verb", served.verb())
        .tag("route", served.route())
        .tag("status", Integer.toString(served.status()))
        .register(registry);
  }
}
