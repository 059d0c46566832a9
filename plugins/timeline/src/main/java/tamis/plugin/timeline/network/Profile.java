package tamis.plugin.timeline.network;

import java.util.Map;
import java.util.TreeMap;

/** How many places of a pool are taken, over time. */
final class Profile {
  private final int capacity;

  /** Places taken from each moment on, to the next. */
  private final TreeMap<Long, Integer> taken = new TreeMap<>();

  Profile(int capacity) {
    this.capacity = capacity;
    taken.put(Long.MIN_VALUE, 0);
  }

  /** The first moment not before {@code time} from which a place is free for so long. */
  long fit(long time, long length) {
    if (length == 0) {
      return time;
    }
    long start = time;
    Map.Entry<Long, Integer> entry = taken.floorEntry(start);
    while (entry != null && (entry.getKey() < start + length)) {
      Map.Entry<Long, Integer> next = taken.higherEntry(entry.getKey());
      if (entry.getValue() >= capacity && next != null) {
        start = Math.max(start, next.getKey());
      }
      entry = next;
    }
    return start;
  }

  /** Takes places, or gives them back if the number is negative. */
  void take(long from, long length, int places) {
    if (length == 0) {
      return;
    }
    split(from);
    split(from + length);
    for (Map.Entry<Long, Integer> entry : taken.subMap(from, from + length).entrySet()) {
      entry.setValue(entry.getValue() + places);
    }
    join(from);
    join(from + length);
  }

  private void split(long at) {
    taken.putIfAbsent(at, taken.floorEntry(at).getValue());
  }

  /** Takes out a moment at which nothing changes. */
  private void join(long at) {
    Map.Entry<Long, Integer> before = taken.lowerEntry(at);
    if (before != null && before.getValue().equals(taken.get(at))) {
      taken.remove(at);
    }
  }
}
