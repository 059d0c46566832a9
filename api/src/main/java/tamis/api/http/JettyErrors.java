package tamis.api.http;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.ByteBuffer;
import org.eclipse.jetty.http.HttpFields;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.handler.ErrorHandler;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.Problem;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** What the web library refuses by itself is told as a problem, too: never its own pages. */
final class JettyErrors extends ErrorHandler {
  private final int longestAddress;
  private final RequestLog log;

  JettyErrors(int longestAddress, RequestLog log) {
    this.longestAddress = longestAddress;
    this.log = log;
  }

  /** A request that cannot be read as HTTP. */
  @Override
  public ByteBuffer badMessageError(
      int status, @Nullable String reason, HttpFields.Mutable fields) {
    fields.put(HttpHeader.CONTENT_TYPE, Problem.CONTENT_TYPE);
    log.told("-", "-", status, 0);
    return ByteBuffer.wrap(problem(status).bytes());
  }

  @Override
  public void handle(
      String target, Request base, HttpServletRequest request, HttpServletResponse response)
      throws IOException {
    base.setHandled(true);
    response.setContentType(Problem.CONTENT_TYPE);
    response.getOutputStream().write(problem(response.getStatus()).bytes());
  }

  private Problem problem(int status) {
    return switch (status) {
      case 414 -> Problem.of(Problems.addressTooLong(longestAddress));
      case 431 -> Problems.plain(status, "the headers are longer than what is read");
      case 400 ->
          Problem.of(Refusal.of(FaultCode.NOT_A_QUERY, "the request is not as HTTP/1.1 wants it"));
      case 408 -> Problems.plain(status, "the request did not come in time");
      case 500 -> Problem.of(Problems.failed());
      default -> Problems.plain(status, "the request cannot be answered");
    };
  }
}
