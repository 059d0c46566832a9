/** Pans: shapes, volumes, the table of pans, and coats. */
@NullMarked
package tamis.engine.pan;

import org.jspecify.annotations.NullMarked;
