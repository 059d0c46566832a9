package tamis.engine.fault;

/** What sort of fault it is; a door (HTTP, command line) maps each kind to its own status. */
public enum FaultKind {
  /** Bytes that cannot be read at all: no UTF-8, no JSON, a name told twice. */
  MALFORMED,
  /** Readable, but it cannot be meant. */
  MEANINGLESS,
  /** The thing that the address names is not there. */
  ABSENT,
  /** The thing is there already, or is used by another. */
  CONFLICT,
  /** The condition that the caller set does not hold. */
  STALE,
  /** A condition is needed and none was given. */
  UNCONDITIONAL,
  /** The caller did not say who it is. */
  UNIDENTIFIED,
  /** The caller may not do this. */
  FORBIDDEN,
  /** The verb is not offered here. */
  WRONG_VERB,
  /** None of the forms that the caller takes can be given. */
  UNACCEPTABLE,
  /** The body is of a type that is not read here. */
  WRONG_TYPE_OF_BODY,
  /** More bytes than are read. */
  TOO_LARGE,
  /** A longer address than is read. */
  TOO_LONG_ADDRESS,
  /** Asked too often. */
  TOO_OFTEN,
  /** A plugin broke. */
  BROKEN,
  /** Not now; the caller may try again. */
  UNAVAILABLE,
  /** The calculation took longer than allowed. */
  TOO_SLOW,
  /** No room is left to write. */
  FULL
}
