package tamis.plugin.timeline.network;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Work that holds each other by longest waits or by meeting: what leads from one to the other and
 * back (strongly connected components, by two depth-first walks).
 */
final class Blocks {
  private final int[] blockOf;
  private final List<List<Integer>> members = new ArrayList<>();

  Blocks(Network network) {
    List<List<Integer>> out = lists(network.size());
    List<List<Integer>> in = lists(network.size());
    for (Link link : network.links()) {
      out.get(link.from()).add(link.to());
      in.get(link.to()).add(link.from());
    }
    List<Integer> finished = new ArrayList<>();
    boolean[] seen = new boolean[network.size()];
    for (int i = 0; i < network.size(); i++) {
      walk(i, out, seen, finished);
    }
    blockOf = new int[network.size()];
    Arrays.fill(seen, false);
    for (int k = finished.size() - 1; k >= 0; k--) {
      List<Integer> block = new ArrayList<>();
      walk(finished.get(k), in, seen, block);
      if (!block.isEmpty()) {
        block.sort(Integer::compare);
        block.forEach(i -> blockOf[i] = members.size());
        members.add(block);
      }
    }
  }

  private static List<List<Integer>> lists(int size) {
    List<List<Integer>> lists = new ArrayList<>();
    for (int i = 0; i < size; i++) {
      lists.add(new ArrayList<>());
    }
    return lists;
  }

  /** Adds all that can be reached, each after all that it leads to. */
  private static void walk(
      int begin, List<List<Integer>> next, boolean[] seen, List<Integer> finished) {
    if (seen[begin]) {
      return;
    }
    List<Integer> path = new ArrayList<>(List.of(begin));
    List<Integer> tried = new ArrayList<>(List.of(0));
    seen[begin] = true;
    while (!path.isEmpty()) {
      int top = path.size() - 1;
      int here = path.get(top);
      int k = tried.get(top);
      if (k == next.get(here).size()) {
        finished.add(here);
        path.remove(top);
        tried.remove(top);
        continue;
      }
      tried.set(top, k + 1);
      int other = next.get(here).get(k);
      if (!seen[other]) {
        seen[other] = true;
        path.add(other);
        tried.add(0);
      }
    }
  }

  int count() {
    return members.size();
  }

  int of(int work) {
    return blockOf[work];
  }

  List<Integer> members(int block) {
    return members.get(block);
  }
}
