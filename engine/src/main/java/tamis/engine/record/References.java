package tamis.engine.record;

/** Looks up what a record refers to. */
@FunctionalInterface
public interface References {
  /** For reading where nothing can be looked up. */
  References UNCHECKED = reference -> {};

  /**
   * @throws tamis.engine.fault.Refusal if nothing of that name is there
   */
  void check(Reference reference);
}
