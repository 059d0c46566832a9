package tamis.api.representation;

import java.io.OutputStream;
import java.util.Arrays;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * Bytes in memory, up to a limit: an answer without end must not take the whole program down. For
 * one thread; a usual answer comes in one piece, is as long as it is, and is copied no more.
 */
final class Capped extends OutputStream {
  static final int MOST = 64 << 20;

  private final int most;
  private byte[] bytes = {};
  private int count;

  Capped(int most) {
    this.most = most;
  }

  @Override
  public void write(int one) {
    write(new byte[] {(byte) one}, 0, 1);
  }

  @Override
  public void write(byte[] more, int from, int length) {
    if (length > most - count) {
      throw Refusal.of(
          FaultCode.FAILED,
          "the calculation answers more than " + most + " bytes; nothing is sent");
    }
    if (length > bytes.length - count) {
      bytes = Arrays.copyOf(bytes, Math.max(count + length, Math.min(2 * count, most)));
    }
    System.arraycopy(more, from, bytes, count, length);
    count += length;
  }

  /** All that was written; nothing more is. */
  byte[] whole() {
    return count == bytes.length ? bytes : Arrays.copyOf(bytes, count);
  }
}
