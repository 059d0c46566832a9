package tamis.plugin.timeline;

import java.util.ArrayList;
import java.util.List;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;
import tamis.plugin.timeline.network.Link;

/** All that is to be done, with what waits for what; gathered before it is given times. */
final class Work {
  /** More would keep a caller waiting for a plan that nobody can read. */
  static final int MOST_TASKS = 20_000;

  private final List<Task> tasks = new ArrayList<>();
  private final List<Link> links = new ArrayList<>();
  private final List<Meeting> meetings = new ArrayList<>();
  private final List<Wait> waits = new ArrayList<>();

  /** Two tasks that finish together. */
  record Meeting(int one, int other) {}

  /** The second starts at most so many microseconds after the first has ended. */
  record Wait(int first, int second, long most) {}

  int add(Task task) {
    if (tasks.size() == MOST_TASKS) {
      Faults faults = new Faults();
      faults.add(
          FaultCode.TOO_MANY,
          task.pointer(),
          "more than " + MOST_TASKS + " steps, counting every batch and load; plan fewer at once");
      faults.refuseIfAny();
    }
    tasks.add(task);
    return tasks.size() - 1;
  }

  /** {@code second} starts after {@code first} has ended. */
  void after(int first, int second) {
    links.add(new Link(first, second, tasks.get(first).micros()));
  }

  /** {@code second} does not start before {@code first} does. */
  void notBefore(int first, int second) {
    links.add(new Link(first, second, 0));
  }

  void meet(int one, int other) {
    meetings.add(new Meeting(one, other));
  }

  void usedWithin(int first, int second, long most) {
    waits.add(new Wait(first, second, most));
  }

  List<Task> tasks() {
    return tasks;
  }

  List<Link> links() {
    return links;
  }

  List<Meeting> meetings() {
    return meetings;
  }

  List<Wait> waits() {
    return waits;
  }

  /** The other side of a longest wait: the first starts at least so late. */
  Link link(Wait wait) {
    return new Link(wait.second(), wait.first(), -tasks.get(wait.first()).micros() - wait.most());
  }

  /** Both sides of a meeting within a tolerance. */
  List<Link> links(Meeting meeting, long tolerance) {
    long one = tasks.get(meeting.one()).micros();
    long other = tasks.get(meeting.other()).micros();
    return List.of(
        new Link(meeting.one(), meeting.other(), one - other - tolerance),
        new Link(meeting.other(), meeting.one(), other - one - tolerance));
  }
}
