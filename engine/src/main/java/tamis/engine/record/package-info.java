/**
 * Described records: the one place that reading, bounds, query names, table headings and schemas
 * come from.
 */
@NullMarked
package tamis.engine.record;

import org.jspecify.annotations.NullMarked;
