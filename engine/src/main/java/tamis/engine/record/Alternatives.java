package tamis.engine.record;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Faults;

/** Checks that exactly one of several alternatives is given. */
final class Alternatives {
  private Alternatives() {}

  static void check(ExactlyOne rule, Map<?, ?> given, String at, Faults faults) {
    List<String> found = Arrays.stream(rule.value()).filter(group -> begun(group, given)).toList();
    String allowed = "exactly one of " + String.join(", ", rule.value());
    if (found.size() != 1) {
      String was = found.isEmpty() ? "none" : String.join(" and ", found);
      faults.add(
          new Fault(
              FaultCode.EXACTLY_ONE, at, was, allowed, "needs " + allowed + ", was given " + was));
      return;
    }
    for (String name : found.get(0).split("\\+")) {
      if (!given.containsKey(name)) {
        faults.add(
            new Fault(
                FaultCode.MISSING,
                at + "/" + name,
                null,
                found.get(0),
                "`" + name + "` is missing: " + found.get(0) + " belong together"));
      }
    }
  }

  private static boolean begun(String group, Map<?, ?> given) {
    return Arrays.stream(group.split("\\+")).anyMatch(given::containsKey);
  }
}
