/** Amounts with their units, and the reader of what a baker writes. */
@NullMarked
package tamis.engine.quantity;

import org.jspecify.annotations.NullMarked;
