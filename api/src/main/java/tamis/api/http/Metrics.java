package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.openapi.HttpMethod;
import io.javalin.openapi.OpenApi;
import io.javalin.openapi.OpenApiContent;
import io.javalin.openapi.OpenApiResponse;
import io.micrometer.core.instrument.Timer;
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

/** Counts and times requests, for Prometheus. */
final class Metrics {
  private static final String TYPE = "text/plain; version=0.0.4; charset=utf-8";

  private final PrometheusMeterRegistry registry =
      new PrometheusMeterRegistry(PrometheusConfig.DEFAULT);
  private final Map<Served, Timer> timers = new ConcurrentHashMap<>();

  private record Served(String verb, String route, int status) {}

  Metrics() {
    new JvmMemoryMetrics().bindTo(registry);
    new JvmThreadMetrics().bindTo(registry);
    new ProcessorMetrics().bindTo(registry);
    new UptimeMetrics().bindTo(registry);
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
    return Reply.of(200, TYPE, registry.scrape().getBytes(StandardCharsets.UTF_8));
  }

  void told(String verb, String route, int status, long nanos) {
    timers
        .computeIfAbsent(new Served(verb, route, status), this::timer)
        .record(nanos, TimeUnit.NANOSECONDS);
  }

  private Timer timer(Served served) {
    return Timer.builder("tamis.requests")
        .description("Requests that were answered")
        .tag("verb", served.verb())
        .tag("route", served.route())
        .tag("status", Integer.toString(served.status()))
        .register(registry);
  }
}
