package tamis.engine.formula;

/** What a stage is repeated for. */
public enum Per {
  BATCH,
  PIECE,
  LOAD
}
