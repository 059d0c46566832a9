package tamis.api.representation;

/**
 * The body of an answer.
 *
 * @param contentType as its header says it
 * @param bytes never changed after this
 */
@SuppressWarnings("ArrayRecordComponent") // compared by nobody; written once to a response
public record Body(String contentType, byte[] bytes) {}
