package tamis.plugin.balancing;

/** How the sum of a row stands to its right side. */
enum Relation {
  AT_LEAST,
  AT_MOST,
  EQUAL
}
