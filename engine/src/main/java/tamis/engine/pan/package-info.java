/** Pan shapes, their volumes, the pan table and coats of cream. */
@NullMarked
package tamis.engine.pan;

import org.jspecify.annotations.NullMarked;
