package tamis.plugin.trials;

/** What a measure is held against. */
public enum Against {
  /** The window of its stage. */
  WINDOW,
  /** What the formula says. */
  AS_WRITTEN,
  /** The other trials; nothing says what it should be. */
  EACH_OTHER
}
