package tamis.plugin.dough;

import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.quantity.Temperature;

/**
 * The temperatures that a dough is reckoned from.
 *
 * @param number how many, the water's own among them
 * @param celsius sum of those that are given: flour, room and preferment
 */
record Counted(int number, double celsius) {
  static Counted of(
      Temperature flour,
      Temperature room,
      @Nullable Temperature preferment,
      Notes notes,
      String pointer) {
    double sum = flour.celsius() + room.celsius();
    if (preferment == null) {
      return new Counted(number("temperatures-counted", notes, pointer), sum);
    }
    return new Counted(
        number("temperatures-counted-with-preferment", notes, pointer), sum + preferment.celsius());
  }

  private static int number(String constant, Notes notes, String pointer) {
    return (int) DoughConstants.cited(constant, notes, pointer);
  }
}
