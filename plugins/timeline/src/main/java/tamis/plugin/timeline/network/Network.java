package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Work with what it waits for, in microseconds. Each piece of work has a length, bounds of its
 * start, links to others, and may need a place in pools.
 */
public final class Network {
  private final long[] lengths;
  private final long[] notBefore;
  private final long[] notAfter;
  private final boolean[] attended;
  private final WorkingTime working;
  private final List<Link> links;
  private final List<Pool> pools;

  /**
   * @param lengths how long each takes
   * @param notBefore earliest start of each
   * @param notAfter latest start of each
   * @param attended which must lie in working time
   */
  public Network(
      long[] lengths,
      long[] notBefore,
      long[] notAfter,
      boolean[] attended,
      WorkingTime working,
      List<Link> links,
      List<Pool> pools) {
    this.lengths = lengths;
    this.notBefore = notBefore;
    this.notAfter = notAfter;
    this.attended = attended;
    this.working = working;
    this.links = List.copyOf(links);
    this.pools = pools.stream().filter(Pool::canBind).toList();
  }

  public int size() {
    return lengths.length;
  }

  public long length(int work) {
    return lengths[work];
  }

  public long notBefore(int work) {
    return notBefore[work];
  }

  public long notAfter(int work) {
    return notAfter[work];
  }

  public WorkingTime working() {
    return working;
  }

  public List<Link> links() {
    return links;
  }

  public List<Pool> pools() {
    return pools;
  }

  public boolean attended(int work) {
    return attended[work];
  }

  /** The first start not before {@code time} that working time allows. */
  long nextStart(int work, long time) {
    return attended[work] ? working.nextStart(time, lengths[work]) : time;
  }

  /** The last start not after {@code time} that working time allows. */
  long lastStart(int work, long time) {
    return attended[work] ? working.lastStart(time, lengths[work]) : time;
  }

  /** When the last of all ends. */
  public long finish(long[] starts) {
    long finish = -WorkingTime.NEVER;
    for (int i = 0; i < starts.length; i++) {
      finish = Math.max(finish, starts[i] + lengths[i]);
    }
    return finish;
  }

  /** When the first of all starts. */
  public static long start(long[] starts) {
    return Arrays.stream(starts).min().orElse(0);
  }

  public Network with(List<Link> more) {
    List<Link> all = new ArrayList<>(links);
    all.addAll(more);
    return new Network(lengths, notBefore, notAfter, attended, working, all, pools);
  }

  public Network in(WorkingTime other) {
    return new Network(lengths, notBefore, notAfter, attended, other, links, pools);
  }

  /** Only some of the work, in this order, with what binds it to each other. */
  public Network only(List<Integer> members) {
    Map<Integer, Integer> index = new HashMap<>();
    members.forEach(member -> index.put(member, index.size()));
    List<Link> inside = new ArrayList<>();
    for (Link link : links) {
      @Nullable Integer from = index.get(link.from());
      @Nullable Integer to = index.get(link.to());
      if (from != null && to != null) {
        inside.add(new Link(from, to, link.lag()));
      }
    }
    List<Pool> shared = new ArrayList<>();
    for (Pool pool : pools) {
      List<Integer> own =
          pool.members().stream().filter(index::containsKey).map(index::get).toList();
      shared.add(new Pool(pool.name(), pool.capacity(), own));
    }
    boolean[] hands = new boolean[members.size()];
    for (int i = 0; i < hands.length; i++) {
      hands[i] = attended[members.get(i)];
    }
    return new Network(
        members.stream().mapToLong(this::length).toArray(),
        members.stream().mapToLong(this::notBefore).toArray(),
        members.stream().mapToLong(this::notAfter).toArray(),
        hands,
        working,
        inside,
        shared);
  }

  /** The same at any time of any day, none of it before 0. */
  public Network anyTime() {
    long[] never = new long[size()];
    Arrays.fill(never, WorkingTime.NEVER);
    return new Network(
        lengths, new long[size()], never, new boolean[size()], WorkingTime.always(), links, pools);
  }

  public Network withoutPools() {
    return new Network(lengths, notBefore, notAfter, attended, working, links, List.of());
  }

  public Network between(long[] earliest, long[] latest) {
    return new Network(lengths, earliest, latest, attended, working, links, pools);
  }

  /** The same work in time that runs backwards, none of it ending after {@code finish}. */
  public Network mirrored(long finish) {
    long[] early = new long[size()];
    long[] late = new long[size()];
    for (int i = 0; i < size(); i++) {
      early[i] = -Math.min(notAfter[i] + lengths[i], finish);
      late[i] = -(notBefore[i] + lengths[i]);
    }
    List<Link> turned = new ArrayList<>();
    for (Link link : links) {
      long lag = link.lag() + lengths[link.to()] - lengths[link.from()];
      turned.add(new Link(link.to(), link.from(), lag));
    }
    return new Network(lengths, early, late, attended, working.mirrored(), turned, pools);
  }

  /** Starts of a mirrored network in time that runs as usual, and the other way round. */
  long[] mirrored(long[] starts) {
    long[] turned = new long[starts.length];
    for (int i = 0; i < starts.length; i++) {
      turned[i] = -(starts[i] + lengths[i]);
    }
    return turned;
  }
}
