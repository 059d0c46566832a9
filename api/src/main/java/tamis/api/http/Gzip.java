package tamis.api.http;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.zip.GZIPOutputStream;
import org.eclipse.jetty.http.HttpField;
import org.eclipse.jetty.http.HttpHeader;
import org.eclipse.jetty.http.PreEncodedHttpField;
import org.jspecify.annotations.Nullable;

/** Compressed bodies, for callers who ask for them. */
final class Gzip {
  static final HttpField ENCODING = new PreEncodedHttpField(HttpHeader.CONTENT_ENCODING, "gzip");

  /** Below this the packet that carries it is the same. */
  private static final int SHORTEST = 1_024;

  private Gzip() {}

  static boolean isWorthIt(int length) {
    return length >= SHORTEST;
  }

  /** Whether {@code Accept-Encoding} names gzip, or all, with a weight that is not zero. */
  static boolean isAskedFor(@Nullable String acceptEncoding) {
    if (acceptEncoding == null) {
      return false;
    }
    boolean all = false;
    for (String part : acceptEncoding.split(",", -1)) {
      String[] named = part.strip().split("\\s*;\\s*", 2);
      boolean refused = named.length > 1 && named[1].matches("(?i)q=0(\\.0*)?");
      if (named[0].equalsIgnoreCase("gzip")) {
        return !refused;
      }
      all |= named[0].equals("*") && !refused;
    }
    return all;
  }

  static byte[] squeezed(byte[] body) {
    var bytes = new ByteArrayOutputStream(body.length / 2);
    try (var out = new GZIPOutputStream(bytes)) {
      out.write(body);
    } catch (IOException impossible) {
      throw new UncheckedIOException(impossible);
    }
    return bytes.toByteArray();
  }
}
