/**
 * Mixes that come to given figures: as a linear programme, with what stops it and at what price.
 */
@NullMarked
package tamis.plugin.balancing;

import org.jspecify.annotations.NullMarked;
