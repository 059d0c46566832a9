package tamis.api.store;

import java.lang.management.ManagementFactory;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Rates in short turns, one beside the other, so that what else the machine does falls on all. */
final class Measured {
  private Measured() {}

  interface Work {
    /** Does it once. */
    void run(long number) throws Exception;
  }

  /** How often a second one thread does it, over that time. */
  static double rate(long nanos, Work work) throws Exception {
    long from = System.nanoTime();
    long done = 0;
    while (System.nanoTime() - from < nanos) {
      work.run(done++);
    }
    return done * 1e9 / (System.nanoTime() - from);
  }

  /** The same by as many threads as there are works. */
  static double rate(long nanos, List<? extends Work> works) throws Exception {
    var threads = Executors.newFixedThreadPool(works.size());
    try {
      List<Callable<Double>> all = new ArrayList<>();
      for (Work work : works) {
        all.add(() -> rate(nanos, work));
      }
      double sum = 0;
      for (Future<Double> one : threads.invokeAll(all)) {
        sum += one.get();
      }
      return sum;
    } catch (ExecutionException failed) {
      throw new IllegalStateException(failed);
    } finally {
      threads.shutdownNow();
    }
  }

  static double median(double... values) {
    double[] sorted = values.clone();
    Arrays.sort(sorted);
    return sorted[sorted.length / 2];
  }

  /** The middle of what each turn gave against the base of the same turn, in percent. */
  static double percent(double[] values, double[] bases) {
    double[] ratios = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      ratios[i] = 100 * values[i] / bases[i];
    }
    return median(ratios);
  }

  /** How busy the machine was meanwhile; figures beside a high load say little. */
  static String load() {
    double load = ManagementFactory.getOperatingSystemMXBean().getSystemLoadAverage();
    return load < 0 ? "unknown" : String.format(Locale.ROOT, "%.1f", load);
  }
}
