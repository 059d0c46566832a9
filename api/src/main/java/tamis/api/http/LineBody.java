package tamis.api.http;

import jakarta.servlet.http.HttpServletRequest;
import java.io.IOException;
import java.io.InputStream;
import java.util.List;
import java.util.zip.GZIPInputStream;
import org.jspecify.annotations.Nullable;
import tamis.api.representation.Format;
import tamis.api.representation.Formats;
import tamis.api.stream.LineAnswers;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** How the lines of a body come: as they are, or compressed. */
enum LineBody {
  PLAIN,
  GZIP;

  private static final int PART = 8_192;

  /** The usual name, and two that others use for the same. */
  private static final String TYPES = "application/(x-ndjson|ndjson|jsonl|x-jsonlines)";

  /**
   * @throws Refusal if the body is of another type, charset or encoding
   */
  static LineBody of(HttpServletRequest request) {
    @Nullable String type = request.getContentType();
    if (type == null || !Bodies.isUtf8Of(TYPES, type)) {
      throw Bodies.otherType(type == null ? "no type" : type, LineAnswers.CONTENT_TYPE);
    }
    @Nullable String encoding = request.getHeader("Content-Encoding");
    if (encoding == null || encoding.equalsIgnoreCase("identity")) {
      return PLAIN;
    }
    if (encoding.equalsIgnoreCase("gzip")) {
      return GZIP;
    }
    throw Bodies.otherType("Content-Encoding " + encoding, "gzip or none");
  }

  InputStream over(InputStream in) throws IOException {
    return this == GZIP ? new GZIPInputStream(in, PART) : in;
  }

  /** What asks for JSON gets lines of it; what asks for neither gets nothing. */
  static void refuseOtherAnswer(@Nullable String accept) {
    var lines = new Format("lines", LineAnswers.CONTENT_TYPE);
    try {
      Formats.choose(null, false, accept, List.of(lines, Format.JSON));
    } catch (Refusal refused) {
      throw new Refusal(
          new Fault(
              FaultCode.UNACCEPTABLE,
              "",
              accept,
              LineAnswers.CONTENT_TYPE,
              "a stream is answered as " + LineAnswers.CONTENT_TYPE + " only"));
    }
  }
}
