package tamis.api.store;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;

/** Stands between a program and its database, so that the way can be cut and mended. */
final class Relay implements AutoCloseable {
  private final int target;
  private final int port;
  private final List<Socket> open = new ArrayList<>();
  private ServerSocket door;

  Relay(int target) {
    this.target = target;
    this.door = opened(0);
    this.port = door.getLocalPort();
    serve(door);
  }

  int port() {
    return port;
  }

  private static ServerSocket opened(int port) {
    try {
      var door = new ServerSocket();
      door.setReuseAddress(true);
      door.bind(new InetSocketAddress(InetAddress.getLoopbackAddress(), port));
      return door;
    } catch (IOException failed) {
      throw new UncheckedIOException(failed);
    }
  }

  private void serve(ServerSocket at) {
    begin(
        () -> {
          while (true) {
            Socket caller = at.accept();
            Socket there = new Socket(InetAddress.getLoopbackAddress(), target);
            synchronized (open) {
              open.add(caller);
              open.add(there);
            }
            begin(() -> pass(caller, there));
            begin(() -> pass(there, caller));
          }
        });
  }

  private static void pass(Socket from, Socket to) throws IOException {
    try (from;
        to;
        InputStream in = from.getInputStream()) {
      in.transferTo(to.getOutputStream());
    }
  }

  private interface Work {
    void run() throws IOException;
  }

  private static void begin(Work work) {
    var thread =
        new Thread(
            () -> {
              try {
                work.run();
              } catch (IOException cut) {
                Thread.currentThread().interrupt(); // it ends here
              }
            });
    thread.setDaemon(true);
    thread.start();
  }

  /** Ends every connection and takes no new one. */
  void cut() throws IOException {
    door.close();
    synchronized (open) {
      for (Socket one : open) {
        one.close();
      }
      open.clear();
    }
  }

  void mend() {
    door = opened(port);
    serve(door);
  }

  @Override
  public void close() throws IOException {
    cut();
  }
}
