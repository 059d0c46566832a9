package tamis.engine.record;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/**
 * Checks that exactly one of several alternatives is given.
 *
 * @param rule as it is written
 * @param groups the names of each alternative
 */
record Alternatives(ExactlyOne rule, List<List<String>> groups) {

  static Alternatives of(ExactlyOne rule) {
    return new Alternatives(
        rule, Arrays.stream(rule.value()).map(group -> List.of(group.split("\\+"))).toList());
  }

  void check(Map<?, ?> given, Place at, Faults faults) {
    int found = -1;
    for (int i = 0; i < groups.size(); i++) {
      if (isBegun(groups.get(i), given)) {
        if (found >= 0) {
          faults.add(notOne(given, at));
          return;
        }
        found = i;
      }
    }
    if (found < 0) {
      faults.add(notOne(given, at));
      return;
    }
    for (String name : groups.get(found)) {
      if (!given.containsKey(name)) {
        String group = rule.value()[found];
        faults.add(
            new Fault(
                FaultCode.MISSING,
                at.of(name),
                null,
                group,
                "`" + name + "` is missing: " + group + " belong together"));
      }
    }
  }

  private Fault notOne(Map<?, ?> given, Place at) {
    List<String> found = new ArrayList<>();
    for (int i = 0; i < groups.size(); i++) {
      if (isBegun(groups.get(i), given)) {
        found.add(rule.value()[i]);
      }
    }
    String allowed = "exactly one of " + String.join(", ", rule.value());
    String was = found.isEmpty() ? "none" : String.join(" and ", found);
    return new Fault(
        FaultCode.EXACTLY_ONE,
        at.toString(),
        was,
        allowed,
        "needs " + allowed + ", was given " + was);
  }

  private static boolean isBegun(List<String> group, Map<?, ?> given) {
    for (String name : group) {
      if (given.containsKey(name)) {
        return true;
      }
    }
    return false;
  }
}
