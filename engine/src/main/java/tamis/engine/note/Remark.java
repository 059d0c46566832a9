package tamis.engine.note;

import tamis.engine.record.Described;

/**
 * What the baker should know although the answer stands.
 *
 * @param kind how weighty it is
 * @param code lower-case words with hyphens, for programs
 * @param message a sentence for a person
 * @param pointer the part of the input it is about (JSON Pointer), or empty
 */
public record Remark(
    @Described("How weighty it is") Kind kind,
    @Described(value = "Lower-case words with hyphens, for programs", example = "measure-assumed")
        String code,
    @Described(value = "A sentence for a person", example = "a cup is taken as the US cup")
        String message,
    @Described(value = "The part of the input it is about (JSON Pointer)", example = "/quantity")
        String pointer) {
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
