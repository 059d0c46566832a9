package tamis.plugin.equivalents;

import java.util.Collection;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.fault.Refusal;
import tamis.engine.ingredient.Ingredient;

/** Says what is known when a pair is not. */
final class KnownForms {
  private KnownForms() {}

  static Refusal refusal(Ingredient from, Ingredient into) {
    Collection<String> known = of(from);
    if (known.isEmpty()) {
      String all = String.join(", ", Pair.all());
      String message = "no other form of `" + from.id() + "` is known; known are the forms of ";
      return refusal("/ingredient", from, all, message + all);
    }
    String forms = String.join(", ", known);
    return refusal(
        "/into",
        into,
        forms,
        "no proportion is known for `"
            + into.id()
            + "` in place of `"
            + from.id()
            + "`; known for it are "
            + forms);
  }

  private static Refusal refusal(String at, Ingredient given, String allowed, String message) {
    return new Refusal(new Fault(FaultCode.NOT_ALLOWED, at, given.id(), allowed, message));
  }

  private static Collection<String> of(Ingredient from) {
    return Gelatine.is(from.id()) ? Gelatine.forms() : Pair.known(Pair.food(from.id()));
  }
}
