/** Many inputs of one calculation, a line each (NDJSON): answered in order, in constant memory. */
@NullMarked
package tamis.api.stream;

import org.jspecify.annotations.NullMarked;
