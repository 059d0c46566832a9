package tamis.plugin.nutrition;

import tamis.engine.table.Table;

/** The tables that figures of labels rest on. */
final class FigureTables {
  static final Table FIGURES =
      AllergenRules.read(
          "label-figures",
          "Figures that labels show, in their order, with daily values and reference intakes",
          "regime",
          "figure");
  static final Table ROUNDING =
      AllergenRules.read(
          "label-rounding", "How figures are rounded, band by band", "group", "band");
  static final Table TOLERANCES =
      AllergenRules.read(
          "label-tolerances", "How far a declared figure may be off", "group", "band");
  static final Table ENERGY =
      AllergenRules.read("energy-factors", "Energy of a gram, by regime", "regime", "part");
  static final Table ALCOHOL =
      AllergenRules.read(
          "alcohol-retention", "Alcohol that is left, by method of cooking", "method");
  static final Table RETENTION =
      AllergenRules.read(
          "retention-factors",
          "Vitamins and minerals that are left, by group of foods and method",
          "group",
          "method",
          "nutrient");
  static final Table SERVINGS =
      AllergenRules.read(
          "reference-amounts", "Reference amounts customarily eaten at a time", "category");

  private FigureTables() {}
}
