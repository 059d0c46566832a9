/** Quantities from one unit into another, over an ingredient's density where it takes one. */
@NullMarked
package tamis.plugin.conversion;

import org.jspecify.annotations.NullMarked;
