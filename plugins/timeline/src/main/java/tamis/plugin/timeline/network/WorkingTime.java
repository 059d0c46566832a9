package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** When hands are there: windows in order that neither touch nor overlap, or always. */
public final class WorkingTime {
  /** Later than anything, and far enough from the largest number that a little can be added. */
  public static final long NEVER = Long.MAX_VALUE / 8;

  private static final WorkingTime ALWAYS =
      new WorkingTime(new long[] {-NEVER}, new long[] {NEVER});

  private final long[] from;
  private final long[] to;

  /** One window. */
  public record Window(long from, long to) {}

  private WorkingTime(long[] from, long[] to) {
    this.from = from;
    this.to = to;
  }

  public static WorkingTime always() {
    return ALWAYS;
  }

  /** The union of windows. */
  public static WorkingTime of(List<Window> windows) {
    List<Window> joined = new ArrayList<>();
    List<Window> sorted = new ArrayList<>(windows);
    sorted.sort(Comparator.comparingLong(Window::from));
    for (Window window : sorted) {
      int last = joined.size() - 1;
      if (last >= 0 && window.from() <= joined.get(last).to()) {
        Window before = joined.get(last);
        joined.set(last, new Window(before.from(), Math.max(before.to(), window.to())));
      } else {
        joined.add(window);
      }
    }
    return new WorkingTime(
        joined.stream().mapToLong(Window::from).toArray(),
        joined.stream().mapToLong(Window::to).toArray());
  }

  boolean isAlways() {
    return this == ALWAYS;
  }

  /** The first time not before {@code time} from which {@code length} lies inside one window. */
  long nextStart(long time, long length) {
    for (int i = firstEndingAfter(time, length); i < from.length; i++) {
      long start = Math.max(time, from[i]);
      if (start + length <= to[i]) {
        return start;
      }
    }
    return NEVER;
  }

  private int firstEndingAfter(long time, long length) {
    int low = 0;
    int high = from.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (to[middle] < time + length) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    return low;
  }

  /** The last time not after {@code time} from which {@code length} lies inside one window. */
  long lastStart(long time, long length) {
    int low = 0;
    int high = from.length;
    while (low < high) {
      int middle = (low + high) >>> 1;
      if (from[middle] <= time) {
        low = middle + 1;
      } else {
        high = middle;
      }
    }
    for (int i = low - 1; i >= 0; i--) {
      long start = Math.min(time, to[i] - length);
      if (start >= from[i]) {
        return start;
      }
    }
    return -NEVER;
  }

  /** How much of the time between two moments lies inside windows. */
  long between(long begin, long end) {
    if (isAlways()) {
      return Math.max(0, end - begin);
    }
    long sum = 0;
    for (int i = firstEndingAfter(begin, 0); i < from.length && from[i] < end; i++) {
      sum += Math.max(0, Math.min(end, to[i]) - Math.max(begin, from[i]));
    }
    return sum;
  }

  /** The longest window. */
  public long longest() {
    long longest = 0;
    for (int i = 0; i < from.length; i++) {
      longest = Math.max(longest, to[i] - from[i]);
    }
    return longest;
  }

  /** The same windows in time that runs backwards. */
  WorkingTime mirrored() {
    if (isAlways()) {
      return this;
    }
    int count = from.length;
    long[] begins = new long[count];
    long[] ends = new long[count];
    for (int i = 0; i < count; i++) {
      begins[i] = -to[count - 1 - i];
      ends[i] = -from[count - 1 - i];
    }
    return new WorkingTime(begins, ends);
  }
}
