package tamis.plugin.stages;

/** How a batch that failed looks. */
public enum Symptom {
  CURDLED,
  SOUPY,
  GRAINY,
  SPLIT,
  LUMPY
}
