package tamis.api.http;

import jakarta.servlet.ServletInputStream;
import java.io.IOException;
import org.eclipse.jetty.server.HttpOutput;

/** A body that is written while it is worked out. */
@FunctionalInterface
interface Streaming {
  /**
   * @param in what the caller sends
   * @param out what the caller gets
   * @throws IOException if the caller no longer reads
   */
  void write(ServletInputStream in, HttpOutput out) throws IOException;
}
