package tamis.plugin.stages;

import tamis.engine.note.Notes;

/** The usual words of care. They leave the last word to local rules and to trained people. */
final class Cautions {
  static final String HOT_SUGAR =
      "hot sugar sticks and burns far deeper than boiling water: dry gloves, long sleeves, a bowl of"
          + " cold water at hand, nobody in the way of the pan; add liquid slowly and at arm's length";
  static final String RAW_EGG =
      "egg that is warmed by syrup or other parts counts as raw unless time and temperature of its"
          + " coldest spot were measured; for people at risk take pasteurised egg; local food law and"
          + " licensed practice prevail";
  static final String ESTIMATE_ONLY =
      "this is an estimate from ingredient figures, not a validated process; a probe in the coldest"
          + " spot decides, and local food law and licensed practice prevail";
  static final String KEEPING =
      "water activity is one hurdle among several; how long something keeps is for tests and for"
          + " licensed practice under local rules to say";

  private Cautions() {}

  static void hotSugar(Notes notes, String pointer) {
    notes.caution("hot-sugar", pointer, HOT_SUGAR);
  }

  static void rawEgg(Notes notes, String pointer) {
    notes.caution("raw-egg", pointer, RAW_EGG);
  }
}
