package tamis.plugin.timeline;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Deque;
import java.util.List;

/** Finds things that wait for each other in a circle. */
final class Circle {
  private Circle() {}

  /**
   * @param before what each waits for
   * @return the way round, its first repeated at its end; empty if there is none
   */
  static List<Integer> in(List<List<Integer>> before) {
    int[] state = new int[before.size()]; // 0 not seen, 1 on the path, 2 done
    for (int i = 0; i < state.length; i++) {
      List<Integer> found = state[i] == 0 ? from(i, before, state) : List.of();
      if (!found.isEmpty()) {
        return found;
      }
    }
    return List.of();
  }

  private static List<Integer> from(int begin, List<List<Integer>> before, int[] state) {
    Deque<Integer> path = new ArrayDeque<>();
    Deque<Integer> tried = new ArrayDeque<>();
    path.push(begin);
    tried.push(0);
    state[begin] = 1;
    while (!path.isEmpty()) {
      int here = path.element();
      int next = tried.pop();
      if (next == before.get(here).size()) {
        state[here] = 2;
        path.pop();
        continue;
      }
      tried.push(next + 1);
      int other = before.get(here).get(next);
      if (state[other] == 1) {
        return round(other, path);
      }
      if (state[other] == 0) {
        state[other] = 1;
        path.push(other);
        tried.push(0);
      }
    }
    return List.of();
  }

  private static List<Integer> round(int other, Deque<Integer> path) {
    List<Integer> circle = new ArrayList<>();
    circle.add(other);
    for (int here : path) {
      circle.add(here);
      if (here == other) {
        break;
      }
    }
    Collections.reverse(circle);
    return circle;
  }
}
