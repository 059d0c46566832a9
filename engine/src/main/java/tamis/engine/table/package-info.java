/** Reference tables: one fact a row, each row with its source. */
@NullMarked
package tamis.engine.table;

import org.jspecify.annotations.NullMarked;
