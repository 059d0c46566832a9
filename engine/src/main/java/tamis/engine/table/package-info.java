/** Reference tables: one fact a row, each with the source it came from. */
@NullMarked
package tamis.engine.table;

import org.jspecify.annotations.NullMarked;
