package example.icecreammix;

import org.jspecify.annotations.Nullable;
import tamis.engine.note.Notes;
import tamis.engine.table.Row;

/**
 * Where ice begins, and how much of the water is ice when it is served; null where the sugars are
 * not known.
 */
record Ice(@Nullable Double celsius, @Nullable Double percent) {
  static final Ice NOT_KNOWN = new Ice(null, null);

  static Ice of(Tally tally, double water, double serving, String whole, Notes notes) {
    Row salts = MixTables.constant("milk-salts");
    notes.cite(salts, "/freezingCelsius");
    Freezing curve =
        new Freezing(tally.equivalent(), salts.number("value") * tally.milkSolids(), water);
    for (Row row : Freezing.about(100 * tally.equivalent() / water)) {
      notes.cite(row, "/freezingCelsius");
    }
    notes.estimate(
        "freezing-estimate",
        whole,
        "the freezing point and the ice are estimates by sucrose equivalents, from tables told"
            + " from memory; expect half a degree and five points of ice either way");
    Ice ice = new Ice(curve.celsius() + 0.0, 100 * curve.frozen(serving));
    ice.remarkOnServing(curve, serving, notes);
    return ice;
  }

  private void remarkOnServing(Freezing curve, double serving, Notes notes) {
    if (percent == null || percent == 0) {
      notes.remark(
          "does-not-freeze", "/serving", "at the serving temperature nothing of it is ice yet");
    } else if (percent < 100) {
      for (Row row : Freezing.about(curve.strength(serving))) {
        notes.cite(row, "/frozenWaterPercent");
      }
      if (curve.strength(serving) > Freezing.end()) {
        notes.estimate(
            "beyond-the-curve",
            "/serving",
            "at this temperature the syrup left is stronger than the curve goes: its last slope was"
                + " drawn on");
      }
    }
  }
}
