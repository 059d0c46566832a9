package tamis.api.http;

import java.nio.ByteBuffer;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.PreEncodedHttpField;
import org.jspecify.annotations.Nullable;

/**
 * What is answered: status, headers and body. Headers are kept encoded, so that a reply that is
 * given again costs nothing but its bytes.
 */
final class Reply {
  static final String JSON = "application/json";

  private static final byte[] NOTHING = {};
  private static final HttpField BY_ORIGIN = field(HttpHeader.VARY, "Origin");
  private static final HttpField BY_ENCODING = field(HttpHeader.VARY, "Accept-Encoding, Origin");
  private static final HttpField BY_FORM =
      field(HttpHeader.VARY, "Accept, Accept-Encoding, Origin");

  private final int status;
  private final List<HttpField> fields;
  private final byte[] body;
  private final @Nullable String tag;
  private final HttpField varies;
  private final @Nullable Streaming streaming;

  private Reply(
      int status, List<HttpField> fields, byte[] body, @Nullable String tag, HttpField varies) {
    this(status, fields, body, tag, varies, null);
  }

  private Reply(
      int status,
      List<HttpField> fields,
      byte[] body,
      @Nullable String tag,
      HttpField varies,
      @Nullable Streaming streaming) {
    this.status = status;
    this.fields = List.copyOf(fields);
    this.body = body;
    this.tag = tag;
    this.varies = varies;
    this.streaming = streaming;
  }

  static Reply of(int status, String type, byte[] body) {
    return new Reply(
        status, List.of(field(HttpHeader.CONTENT_TYPE, type)), body, null, BY_ENCODING);
  }

  static Reply json(byte[] body) {
    return of(200, JSON, body);
  }

  /** An answer that is written while it is worked out, of a length that nobody knows before. */
  static Reply streamed(String type, Streaming streaming) {
    var fields = List.of(field(HttpHeader.CONTENT_TYPE, type));
    return new Reply(200, fields, NOTHING, null, BY_ORIGIN, streaming);
  }

  static Reply empty(int status) {
    return new Reply(status, List.of(), NOTHING, null, BY_ORIGIN);
  }

  Reply with(HttpHeader header, String value) {
    return with(field(header, value));
  }

  Reply with(HttpField field) {
    var more = new ArrayList<>(fields);
    more.add(field);
    return new Reply(status, more, body, tag, varies);
  }

  /** A document under the tag of its revision; its bytes are the same to all, never compressed. */
  Reply ofRevision(int number) {
    return new Reply(status, fields, body, Conditions.tag(number), BY_ORIGIN);
  }

  /** The same, of a document whose changes are not counted by one number alone. */
  Reply ofVersion(String version) {
    return new Reply(status, fields, body, Conditions.tag(version), BY_ORIGIN);
  }

  /** An answer whose form the caller chose; a caller who has it under this tag may keep it. */
  Reply ofForm(String formTag) {
    var kept = with(HttpHeader.CACHE_CONTROL, "no-cache");
    return new Reply(status, kept.fields, body, formTag, BY_FORM);
  }

  int status() {
    return status;
  }

  /** All headers but the length, the tag, the encoding and those for pages of other origins. */
  List<HttpField> fields() {
    return fields;
  }

  /** By which headers of the request the reply varies. */
  HttpField varies() {
    return varies;
  }

  /** The strong tag, or null. */
  @Nullable String tag() {
    return tag;
  }

  /** The body as it is; the server leaves it away for HEAD. */
  ByteBuffer body() {
    return ByteBuffer.wrap(body);
  }

  /** What writes the body, or null if it is there already. */
  @Nullable Streaming streaming() {
    return streaming;
  }

  int length() {
    return body.length;
  }

  byte[] squeezed() {
    return Gzip.squeezed(body);
  }

  /** Whether it may be sent compressed. */
  boolean isSqueezable() {
    return !varies.equals(BY_ORIGIN) && Gzip.isWorthIt(body.length);
  }

  private static HttpField field(HttpHeader header, String value) {
    return new PreEncodedHttpField(header, value);
  }
}
