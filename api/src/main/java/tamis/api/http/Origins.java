package tamis.api.http;

import jakarta.servlet.http.HttpServletRequest;
import java.util.List;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.PreEncodedHttpField;
import org.jspecify.annotations.Nullable;

/** Which pages of other origins may call and read the answers, refusals among them. */
final class Origins {
  private static final HttpField EXPOSED =
      new PreEncodedHttpField("Access-Control-Expose-Headers", "ETag, Location, Retry-After");
  private static final HttpField HEADERS =
      new PreEncodedHttpField(
          "Access-Control-Allow-Headers",
          "Accept, Authorization, Content-Type, If-Match, If-None-Match");
  private static final HttpField VERBS =
      new PreEncodedHttpField(
          "Access-Control-Allow-Methods", "GET, HEAD, POST, PUT, DELETE, OPTIONS");

  /** How long a browser may keep the answer to a preflight: ten minutes. */
  private static final HttpField AGE = new PreEncodedHttpField("Access-Control-Max-Age", "600");

  private final List<String> allowed;

  Origins(List<String> allowed) {
    this.allowed = allowed;
  }

  void admit(HttpServletRequest request, HttpFields.Mutable fields) {
    if (allowed.isEmpty()) {
      return;
    }
    @Nullable String origin = request.getHeader("Origin");
    if (origin == null || !isAllowed(origin)) {
      return;
    }
    fields.add("Access-Control-Allow-Origin", origin);
    fields.add(EXPOSED);
    if (request.getMethod().equals("OPTIONS")
        && request.getHeader("Access-Control-Request-Method") != null) {
      fields.add(VERBS);
      fields.add(HEADERS);
      fields.add(AGE);
    }
  }

  private boolean isAllowed(String origin) {
    return allowed.contains("*") || allowed.contains(origin);
  }
}
