package tamis.engine.record;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * What a component of a record means and which values it takes. A component whose type is
 * {@code @Nullable} may be left out; every other one must be given. Bounds are written as the
 * component itself is written: {@code "0"} for a number, {@code "0 g"} for a mass.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.RECORD_COMPONENT)
public @interface Described {
  /** The meaning, as one sentence or less. */
  String value();

  /** The name that callers write, where Java does not allow it as the component's own. */
  String name() default "";

  /** The unit of a plain number. */
  String unit() default "";

  /** The smallest value allowed. */
  String atLeast() default "";

  /** The largest value allowed. */
  String atMost() default "";

  /** The value must be more than this. */
  String moreThan() default "";

  /** The value must be less than this. */
  String lessThan() default "";

  /** How many entries a list, or how many characters a text, may have. */
  int most() default Integer.MAX_VALUE;

  /** How few entries a list may have. */
  int fewest() default 0;

  /** The operator's limit on the entries of this list. */
  Limit limit() default Limit.NONE;

  /** A value as a caller would write it. */
  String example() default "";

  /** A list or map that may be left out and is then empty. */
  boolean optional() default false;

  /** {@code null} is read as left out; for documents that write out what is not known. */
  boolean nullAllowed() default false;

  /** The one number that a bare-text answer gives when nothing is picked. */
  boolean headline() default false;

  /** The list that a table answer gives when nothing is picked. */
  boolean table() default false;
}
