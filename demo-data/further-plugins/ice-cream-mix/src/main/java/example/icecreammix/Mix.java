package example.icecreammix;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import tamis.engine.fault.Fault;
import tamis.engine.fault.FaultCode;
import tamis.engine.formula.Batch;
import tamis.engine.ingredient.Nutrient;
import tamis.engine.note.Notes;
import tamis.engine.spi.Kitchen;

/** All that is in the mix, and the part of it that cooking drives off. */
record Mix(List<MixPart> parts, double lost) {
  static Mix of(IceCreamMix.Input input, Kitchen kitchen, Notes notes) {
    List<MixPart> parts = new ArrayList<>();
    if (input.formula() == null || input.to() == null) {
      for (int i = 0; i < input.mix().size(); i++) {
        IceCreamMix.Portion portion = input.mix().get(i);
        parts.add(
            new MixPart(
                kitchen.ingredient(portion.ingredient()),
                portion.mass().grams(),
                "/mix/" + i + "/ingredient"));
      }
      return new Mix(parts, 0);
    }
    Batch batch = kitchen.batch(input.formula(), input.to());
    batch.remarks().forEach(notes::add);
    batch.sources().forEach(notes::cite);
    double mass = batch.root().mass().typical();
    double madeUp = batch.root().madeUp().typical();
    if (mass - madeUp > 0.001 * mass) {
      notes.remark(
          "more-than-asked",
          "/to",
          String.format(
              Locale.ROOT,
              "%.0f g go into the pot so that %.0f g are left after what stays in pots and bowls; the"
                  + " mix is told for all that goes in",
              mass,
              madeUp));
    }
    for (Batch.BillRow row : batch.bill()) {
      if (row.asNeeded()) {
        notes.remark(
            "as-needed-left-out",
            "/formula",
            row.ingredient().title("en") + " is taken as needed and is not counted");
      } else if (row.remaining().typical() > 0) {
        parts.add(new MixPart(row.ingredient(), row.remaining().typical(), "/formula"));
      }
    }
    double finished = batch.root().finished().typical();
    return new Mix(parts, madeUp > 0 ? Math.max(0, 1 - finished / madeUp) : 0);
  }

  void needed(
      Nutrient nutrient, double tolerated, List<Fault> faults, Notes notes) {
    double unknown = unknown(nutrient);
    for (MixPart part : parts) {
      if (part.of(nutrient) != null) {
        continue;
      }
      String said =
          "the " + nutrient.words() + " of " + part.ingredient().title("en") + " is not known";
      if (unknown > tolerated) {
        faults.add(
            new Fault(
                FaultCode.INCOMPLETE,
                part.pointer(),
                part.ingredient().id(),
                "an ingredient whose " + nutrient.words() + " is known",
                said + ": add it to the ingredient, or leave it out of the mix"));
      } else {
        notes.remark(nutrient.toString() + "-not-known", part.pointer(), said + "; it is counted as none");
      }
    }
  }

  double unknown(Nutrient nutrient) {
    return parts.stream().filter(p -> p.of(nutrient) == null).mapToDouble(MixPart::grams).sum();
  }

  /** Grams whose sugars are not known, but for syrups, which are counted by their own table. */
  double unknownSugars() {
    return parts.stream()
        .filter(p -> MixTables.SYRUPS.row(p.ingredient().id()) == null)
        .filter(p -> p.of(Nutrient.SUGARS) == null)
        .mapToDouble(MixPart::grams)
        .sum();
  }

  String names(Nutrient nutrient) {
    return String.join(
        ", ",
        parts.stream()
            .filter(p -> p.of(nutrient) == null)
            .map(p -> p.ingredient().title("en"))
            .toList());
  }

  double sum(Nutrient nutrient) {
    return parts.stream().mapToDouble(p -> p.orNothing(nutrient)).sum();
  }
}
