package tamis.engine.record;

import org.jspecify.annotations.Nullable;

/**
 * A value that a document gives either as text or as an object. The record has {@code static T
 * parse(String)} for the text and {@code static T of(O)} for the object.
 *
 * @param <O> the object form
 */
public interface TextOrObject<O extends Record> {
  /** The text form, or null if it was given as an object. */
  @Nullable String text();

  /** The object form, or null if it was given as text. */
  @Nullable O object();
}
