package tamis.engine.record;

import java.lang.annotation.Documented;
import java.lang.annotation.ElementType;
import java.lang.annotation.Repeatable;
import java.lang.annotation.Retention;
import java.lang.annotation.RetentionPolicy;
import java.lang.annotation.Target;

/**
 * Of the named components exactly one is given. A group "pieces+pieceMass" stands for all of its
 * names together.
 */
@Documented
@Retention(RetentionPolicy.RUNTIME)
@Target(ElementType.TYPE)
@Repeatable(ExactlyOne.Groups.class)
public @interface ExactlyOne {
  /** The alternatives. */
  String[] value();

  /** Several rules on one record. */
  @Documented
  @Retention(RetentionPolicy.RUNTIME)
  @Target(ElementType.TYPE)
  @interface Groups {
    /** The rules. */
    ExactlyOne[] value();
  }
}
