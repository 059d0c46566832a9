package tamis.api.http;

import io.javalin.http.Context;
import jakarta.servlet.http.HttpServletRequest;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Duration;
import java.util.Locale;
import java.util.concurrent.Semaphore;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.JsonLimits;
import tamis.api.representation.StrictJson;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Reads bodies: so many bytes, in so much time, of the wanted type. */
final class Bodies {
  private static final String JSON = "application/json";

  /** Threads that may wait for slow senders; the rest stays free for everybody else. */
  private static final int MOST_AT_ONCE = 100;

  private static final int PART = 8_192;

  /** A caller who tells of more must send it before there is room for it. */
  private static final int LARGEST_TAKEN_ON_TRUST = 64 * 1024;

  private final int mostBytes;
  private final Duration patience;
  private final JsonLimits limits;
  private final Semaphore places = new Semaphore(MOST_AT_ONCE);

  Bodies(ServerSettings settings) {
    this.mostBytes = settings.bodyBytes();
    this.patience = settings.sender();
    this.limits = new JsonLimits(settings.nesting(), settings.limits().digits());
  }

  /** The sender took too long; the connection is of no more use. */
  static final class SlowSender extends IOException {
    private static final long serialVersionUID = 1L;

    SlowSender() {
      super("the body did not come in time");
    }
  }

  /**
   * A body that was read.
   *
   * @param tree its JSON as maps, lists and plain values
   * @param length in bytes
   */
  record Read(@Nullable Object tree, int length) {}

  /**
   * The JSON of the body.
   *
   * @throws Refusal if it is of another type, too large or no JSON
   * @throws SlowSender if it does not come in time
   */
  Read read(Context call) throws IOException {
    refuseOtherType(call.req());
    byte[] bytes = bytes(call.req());
    return new Read(StrictJson.tree(bytes, limits), bytes.length);
  }

  /** The bytes of a CSV body, or null if the body says it is something else. */
  byte @Nullable [] csv(Context call) throws IOException {
    @Nullable String type = call.req().getContentType();
    return type != null && isUtf8Of("text/csv", type) ? bytes(call.req()) : null;
  }

  private byte[] bytes(HttpServletRequest request) throws IOException {
    long told = request.getContentLengthLong();
    if (told > mostBytes) {
      throw tooLarge(told + " bytes");
    }
    if (!places.tryAcquire()) {
      throw Refusal.of(
          FaultCode.TOO_OFTEN, "too many bodies are being sent at this moment; try again in 5 s");
    }
    try {
      return read(request, told < 0 ? PART : (int) Math.min(told, LARGEST_TAKEN_ON_TRUST));
    } finally {
      places.release();
    }
  }

  private byte[] read(HttpServletRequest request, int expected) throws IOException {
    long deadline = System.nanoTime() + patience.toNanos();
    var in = request.getInputStream();
    var body = new ByteArrayOutputStream(expected);
    byte[] part = new byte[PART];
    for (int count = in.read(part); count >= 0; count = in.read(part)) {
      body.write(part, 0, count);
      if (body.size() > mostBytes) {
        throw tooLarge("more than " + mostBytes + " bytes");
      }
      if (System.nanoTime() > deadline) {
        throw new SlowSender();
      }
    }
    return body.toByteArray();
  }

  private Refusal tooLarge(String given) {
    return new Refusal(
        new Fault(
            FaultCode.TOO_LARGE,
            "",
            given,
            "at most " + mostBytes + " bytes",
            "the body has " + given + ", at most " + mostBytes + " are read"));
  }

  private static void refuseOtherType(HttpServletRequest request) {
    @Nullable String given = request.getContentType();
    @Nullable String encoding = request.getHeader("Content-Encoding");
    if (encoding != null && !encoding.equalsIgnoreCase("identity")) {
      throw otherType("Content-Encoding " + encoding, "a body that is not compressed");
    }
    if (given == null || !isJson(given)) {
      throw otherType(given == null ? "no type" : given, JSON);
    }
  }

  private static boolean isJson(String given) {
    return isUtf8Of("application/(json|[a-z0-9.-]+\\+json)", given);
  }

  /** Whether a type is one of those that the pattern names, in UTF-8. */
  static boolean isUtf8Of(String types, String given) {
    String[] parts = given.toLowerCase(Locale.ROOT).split(";", -1);
    for (int i = 1; i < parts.length; i++) {
      String parameter = parts[i].strip().replace("\"", "");
      if (parameter.startsWith("charset=") && !parameter.matches("charset=(utf-?8|us-ascii)")) {
        return false;
      }
    }
    return parts[0].strip().matches(types);
  }

  static Refusal otherType(String given, String allowed) {
    return new Refusal(
        new Fault(
            FaultCode.WRONG_TYPE_OF_BODY,
            "",
            given,
            allowed,
            "the body is of " + given + "; wanted is " + allowed + " in UTF-8"));
  }
}
