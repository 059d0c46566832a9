package example.icecreammix;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;

/**
 * What the parts of a mix bring together.
 *
 * @param shares of each part
 * @param sugar grams of all sugars that are known
 * @param sweetener grams of sugars and syrup solids without lactose
 * @param equivalent grams of sucrose that lower the freezing point as much
 * @param milkSolids grams without fat, as far as they are known
 * @param milkKnown whether those of all parts are
 * @param withoutLactose whether lactose was taken off the sugars of a part
 */
record Tally(
    List<IceCreamMix.Share> shares,
    double sugar,
    double sweetener,
    double equivalent,
    double milkSolids,
    boolean milkKnown,
    boolean withoutLactose) {

  static Tally of(List<MixPart> parts, Notes notes) {
    List<IceCreamMix.Share> shares = new ArrayList<>();
    double sugar = 0;
    double sweetener = 0;
    double equivalent = 0;
    double milk = 0;
    boolean milkKnown = true;
    boolean withoutLactose = false;
    for (MixPart part : parts) {
      String place = "/shares/" + shares.size();
      @Nullable Double solids = part.milkSolids(notes, place);
      if (solids == null) {
        milkKnown = false;
        remarkOnMilk(part, notes);
      } else {
        milk += solids;
        withoutLactose |= solids > 0 && !part.isPlainMilk();
      }
      @Nullable Double counted = part.equivalent(solids, notes, place);
      equivalent += counted == null ? 0 : counted;
      sugar += part.orNothing(Nutrient.SUGARS);
      sweetener += part.sweetener(solids);
      shares.add(
          new IceCreamMix.Share(
              part.ingredient().id(),
              part.grams(),
              part.of(Nutrient.WATER),
              part.of(Nutrient.FAT),
              part.of(Nutrient.SUGARS),
              solids,
              counted));
    }
    return new Tally(shares, sugar, sweetener, equivalent, milk, milkKnown, withoutLactose);
  }

  private static void remarkOnMilk(MixPart part, Notes notes) {
    notes.remark(
        "milk-solids-not-known",
        part.pointer(),
        "how much milk is in "
            + part.ingredient().title("en")
            + " is not known: milk solids not fat are left out, and the freezing point is without"
            + " its milk salts");
  }
}
