package tamis.api.http;

import io.javalin.http.Context;
import io.javalin.http.HandlerType;
import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.nio.ByteBuffer;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import org.eclipse.jetty.http.BadMessageException;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.server.Request;
import org.eclipse.jetty.server.Response;
import org.jspecify.annotations.Nullable;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;
import tamis.api.http.Bodies.SlowSender;
import tamis.engine.fault.Refusal;

/** Asks an endpoint and sends what it answers; the one place from which anything is sent. */
final class Door {
  private static final Logger LOG = LoggerFactory.getLogger(Door.class);

  private final Origins origins;
  private final RequestLog log;
  private final int longestAddress;

  Door(ServerSettings settings, RequestLog log) {
    this.origins = new Origins(settings.origins());
    this.log = log;
    this.longestAddress = settings.queryBytes();
  }

  void serve(Context call, String route, Endpoint endpoint) {
    long from = System.nanoTime();
    Reply reply = answer(call, route, endpoint);
    int status = send(call, reply);
    long nanos = System.nanoTime() - from;
    String verb = call.method().name(); // a closed list, so that nobody fills memory with names
    log.told(verb, route, status, nanos);
  }

  private Reply answer(Context call, String route, Endpoint endpoint) {
    try {
      if (call.req().getRequestURI().length() > longestAddress) {
        return Problems.of(Problems.addressTooLong(longestAddress));
      }
      return endpoint.answer(call);
    } catch (Refusal refusal) {
      return Problems.of(refusal);
    } catch (IOException cut) {
      return cutOff(cut);
    } catch (Exception | VirtualMachineError | LinkageError unexpected) {
      LOG.error("{} {} failed", call.req().getMethod(), route, unexpected);
      return Problems.of(Problems.failed());
    }
  }

  /** The body did not come, or not as HTTP says. No more is read from this connection. */
  private static Reply cutOff(IOException cut) {
    boolean slow = cut instanceof SlowSender || cut.getCause() instanceof TimeoutException;
    var problem =
        slow
            ? Problems.plain(408, "the body did not come in time")
            : Problems.plain(400, "the body did not come whole");
    return Problems.reply(problem).with(HttpHeader.CONNECTION, "close");
  }

  /** Of a write the caller has not seen the answer, whatever its conditions. */
  private static boolean isRead(Context call) {
    return call.method() == HandlerType.GET || call.method() == HandlerType.HEAD;
  }

  private int send(Context call, Reply reply) {
    var request = call.req();
    var response = (Response) call.res();
    var fields = response.getHttpFields();
    fields.remove(HttpHeader.CONTENT_TYPE);
    @Nullable String tag = reply.tag();
    boolean known =
        tag != null
            && reply.status() == 200
            && isRead(call)
            && Conditions.isKnown(request.getHeader("If-None-Match"), tag);
    int status = known ? 304 : reply.status();
    ByteBuffer body = reply.body();
    if (known) {
      body = Reply.empty(304).body();
    } else if (reply.isSqueezable() && Gzip.isAskedFor(request.getHeader("Accept-Encoding"))) {
      body = ByteBuffer.wrap(reply.squeezed());
      fields.add(Gzip.ENCODING);
      tag = tag == null ? null : Conditions.squeezed(tag);
    }
    response.setStatus(status);
    for (var field : reply.fields()) {
      if (!known || field.getHeader() != HttpHeader.CONTENT_TYPE) {
        fields.add(field);
      }
    }
    fields.add(reply.varies());
    if (tag != null) {
      fields.add(HttpHeader.ETAG, tag);
    }
    origins.admit(request, fields);
    @Nullable Streaming streaming = reply.streaming();
    if (streaming != null) {
      stream(streaming, request, response);
      return status;
    }
    if (status != 204 && status != 304) {
      response.setContentLength(body.remaining());
    }
    write(response, body);
    if (status == 408) {
      closeSoon(request);
    }
    return status;
  }

  private static void stream(Streaming streaming, HttpServletRequest request, Response response) {
    try {
      streaming.write(request.getInputStream(), response.getHttpOutput());
    } catch (IOException gone) {
      LOG.debug("the caller no longer reads", gone);
      Request.getBaseRequest(request).getHttpChannel().getEndPoint().close();
    }
  }

  /** The caller may read why; what it still sends, byte by byte, is waited for by nobody. */
  private static void closeSoon(HttpServletRequest request) {
    var channel = Request.getBaseRequest(request).getHttpChannel();
    channel
        .getConnector()
        .getScheduler()
        .schedule(channel.getEndPoint()::close, 1, TimeUnit.SECONDS);
  }

  private static void write(Response response, ByteBuffer body) {
    try {
      // Head and body leave in one write: two packets cost a keep-alive caller 40 ms.
      response.getHttpOutput().sendContent(body);
    } catch (IOException | BadMessageException gone) {
      LOG.debug("the caller went away", gone);
    }
  }
}
