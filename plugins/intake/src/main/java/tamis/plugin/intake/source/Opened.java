package tamis.plugin.intake.source;

import java.util.List;
import java.util.function.IntFunction;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;

/**
 * A source that was opened: its recipes are known by their number, and each is taken out when it is
 * asked for.
 *
 * @param count how many recipes there are
 * @param recipes each of them, from 1
 * @param broken why parts of the source were left
 */
public record Opened(int count, IntFunction<Source> recipes, List<String> broken) {

  static Opened of(List<Source> all) {
    return new Opened(all.size(), number -> all.get(number - 1), List.of());
  }

  /** One of the recipes, from 1. */
  public Source recipe(int which) {
    if (which > count) {
      throw new Refusal(
          new Fault(
              FaultCode.NO_SUCH_VALUE,
              "/recipe",
              String.valueOf(which),
              "1 to " + count,
              "the source has "
                  + count
                  + (count == 1 ? " recipe" : " recipes")
                  + ", recipe "
                  + which
                  + " was asked for"));
    }
    return recipes.apply(which);
  }
}
