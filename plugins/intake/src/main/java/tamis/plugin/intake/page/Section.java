package tamis.plugin.intake.page;

/** What a heading says of the lines below it; the table of words has the headings. */
enum Section {
  INGREDIENTS,
  STEPS,
  NOTES
}
