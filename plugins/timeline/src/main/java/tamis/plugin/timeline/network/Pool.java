package tamis.plugin.timeline.network;

import java.util.List;

/**
 * A station, or the cooks' hands: how many of its members can go on at a time.
 *
 * @param name as a person is told
 * @param capacity how many at a time
 * @param members indices of stages
 */
public record Pool(String name, int capacity, List<Integer> members) {
  public Pool {
    members = List.copyOf(members);
  }

  /** Whether its members could ever be too many. */
  boolean canBind() {
    return members.size() > capacity;
  }
}
