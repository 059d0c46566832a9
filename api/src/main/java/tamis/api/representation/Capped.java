package tamis.api.representation;

import java.io.ByteArrayOutputStream;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/** Bytes in memory, up to a limit: an answer without end must not take the whole program down. */
final class Capped extends ByteArrayOutputStream {
  static final int MOST = 64 << 20;

  private final int most;

  Capped(int most) {
    super(1024);
    this.most = most;
  }

  @Override
  public synchronized void write(int one) {
    refuseBeyond(1);
    super.write(one);
  }

  @Override
  public synchronized void write(byte[] bytes, int from, int length) {
    refuseBeyond(length);
    super.write(bytes, from, length);
  }

  private void refuseBeyond(int more) {
    if (more > most - count) {
      throw Refusal.of(
          FaultCode.FAILED,
          "the calculation answers more than " + most + " bytes; nothing is sent");
    }
  }
}
