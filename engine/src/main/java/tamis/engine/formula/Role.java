package tamis.engine.formula;

/** What a formula is within another. */
public enum Role {
  /** A part of its own; its flour and water do not join. */
  PART,
  /** Flour, water and yeast fermented before; joins the parent's flour and water. */
  PREFERMENT,
  /** Grain left in water; joins the parent's flour and water. */
  SOAKER,
  /** Flour gelatinised in hot liquid; joins the parent's flour and water. */
  SCALD;

  /** Whether flour and water count as the parent's. */
  public boolean joins() {
    return this != PART;
  }
}
