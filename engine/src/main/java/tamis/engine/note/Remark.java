package tamis.engine.note;

/**
 * What the baker should know although the answer stands.
 *
 * @param kind how weighty it is
 * @param code lower-case words with hyphens, for programs
 * @param message a sentence for a person
 * @param pointer the part of the input it is about (JSON Pointer), or empty
 */
public record Remark(Kind kind, String code, String message, String pointer) {
  /** How weighty a remark is. */
  public enum Kind {
    /** Something to know. */
    REMARK,
    /** The figure is an estimate. */
    ESTIMATE,
    /** Someone can be hurt. */
    CAUTION
  }
}
